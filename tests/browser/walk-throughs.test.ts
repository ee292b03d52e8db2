import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { fillRound } from "../http/full-round.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let beds: Awaited<ReturnType<typeof fillRound>>;

beforeAll(async () => {
  served = await serveAlderBay();
  beds = await fillRound(served.desk);
}, 180_000);

afterAll(() => served?.close());

/** A person's hand on the page: counts touches and keys since the last count was taken. */
function handOf(page: Page) {
  let count = 0;
  return {
    touch: async (control: Locator): Promise<void> => {
      count++;
      await control.click();
    },
    choose: async (question: string, answer: string): Promise<void> => {
      count++;
      await page.getByRole("group", { name: question }).getByLabel(answer, { exact: true }).check();
    },
    type: async (label: string, text: string): Promise<void> => {
      count += 1 + text.length;
      await page.getByLabel(label, { exact: true }).fill(text);
    },
    press: async (key: string): Promise<void> => {
      count++;
      await page.keyboard.press(key);
    },
    taken: (): number => {
      const taken = count;
      count = 0;
      return taken;
    },
  };
}

const bed = (page: Page, number: number): Locator => page.getByRole("article", { name: `Bed ${number} BED-${number}` });
const named = (place: Page | Locator, name: string | RegExp): Locator => place.getByRole("button", { name });

describe("a bedside nurse's day", () => {
  it("goes from the wards through the round, a care check, an admission and a removal, each in few touches", async () => {
    const page = await served.tab({ person: "bedside", viewport: { width: 820, height: 1180 } });
    await page.goto("/");
    const hand = handOf(page);
    const counts: Record<string, number> = {};

    await hand.touch(page.getByRole("link", { name: "Round of 3E" }));
    await bed(page, 10).waitFor();
    counts.openRound = hand.taken();

    await hand.touch(named(bed(page, 9), /^Still needed/));
    await bed(page, 9)
      .getByText(/^Recorded at 10:00: still needed/)
      .waitFor();
    counts.keep = hand.taken();

    await hand.touch(named(bed(page, 2), "Other decision"));
    await hand.touch(named(bed(page, 2), "Remove"));
    await bed(page, 2)
      .getByText(/^Recorded at 10:00/)
      .waitFor();
    counts.remove = hand.taken();

    await hand.touch(named(bed(page, 10), "Confirm in place"));
    await bed(page, 10)
      .getByText(/^Recorded at 10:00: confirmed in place/)
      .waitFor();
    counts.seen = hand.taken();

    await hand.touch(bed(page, 3).getByRole("link", { name: "Maintenance bundle check" }));
    await hand.touch(named(page, "All kept"));
    await hand.touch(named(page, "Record bundle check"));
    await page.getByRole("heading", { name: "Recorded: maintenance bundle check" }).waitFor();
    counts.careCheck = hand.taken();

    await page.goto(`/wards/${served.hospital.wards["3E"]}/round`);
    hand.taken();
    await hand.touch(bed(page, 7).getByRole("link", { name: "Record removal" }));
    await hand.touch(named(page, "Now"));
    await hand.touch(named(page, "Record removal"));
    await page.getByRole("heading", { name: "Recorded: removal" }).waitFor();
    counts.out = hand.taken();

    await hand.touch(page.getByRole("navigation").getByRole("link", { name: "Patients" }));
    await hand.touch(page.getByRole("link", { name: "Admit a patient" }));
    hand.taken();
    await page.getByLabel("The patient's number in the hospital").fill("WALK-1");
    await page.getByLabel("The number of the stay").fill("WALK-S1");
    await named(page, "Admit").click();
    await hand.touch(page.getByRole("link", { name: "Yes, found in place" }));
    await hand.choose("Why it is needed", "Comfort at the end of life");
    await hand.touch(named(page, "Record that it is in place"));
    await page.getByRole("article", { name: /WALK-1/ }).waitFor();
    counts.foundOnArrival = hand.taken();

    expect(counts).toEqual({
      ...{ openRound: 1, keep: 1, remove: 2, seen: 1, careCheck: 3, out: 3, foundOnArrival: 3 },
    });
    const { removedAt } = await served.desk.ask(endpoints.readCatheter, { catheterId: beds[7].catheterId });
    expect(removedAt).toBe(Date.UTC(2026, 10, 20, 15));
  }, 90_000);
});

describe("an infection-prevention nurse's day", () => {
  it("opens the month down to a patient's catheter, sets a month beside it, and takes the figures along", async () => {
    const page = await served.tab({ person: "prevention" });
    await page.goto("/");
    const hand = handOf(page);
    await hand.touch(page.getByRole("navigation").getByRole("link", { name: "Month" }));
    await hand.touch(named(page, /catheter-days of 4N/));
    await hand.touch(named(page, /catheter-days on Mon, Nov 9/));
    await page.getByRole("row", { name: "ALDER-1002 yes, in place" }).waitFor();
    expect(hand.taken()).toBe(3);
    await page
      .getByRole("region", { name: "Data quality" })
      .getByText("OBS: The setting of this unit is not recorded")
      .waitFor();
    const download = page.waitForEvent("download");
    await hand.touch(named(page, "Reviews and care as CSV"));
    expect((await download).suggestedFilename()).toBe("care-2026-11.csv");
    await hand.touch(named(page, "Compare"));
    await page.getByText("Two months side by side.").waitFor();
    expect(hand.taken()).toBe(2);
  }, 60_000);
});

describe("a ward manager's day", () => {
  it("sees the figures of the own ward, its days and what is missing, and no patient anywhere", async () => {
    const page = await served.tab({ person: "manager" });
    const answers: string[] = [];
    page.on("response", async (response) => {
      if (response.url().includes("/api/")) answers.push(await response.text().catch(() => ""));
    });
    await page.goto("/");
    const hand = handOf(page);
    await page.getByText("overdue").first().waitFor();
    await hand.touch(page.getByRole("navigation").getByRole("link", { name: "Month" }));
    await hand.touch(named(page, /patient-days of 3E/));
    await page.getByText("Your role shows unit days; it does not show patients.").waitFor();
    expect(hand.taken()).toBe(2);
    expect(await page.getByText("4N").count()).toBe(0);
    expect(answers.length).toBeGreaterThan(4);
    expect(answers.filter((text) => /BED-|ALDER-/.test(text))).toEqual([]);
  }, 60_000);
});

describe("an administrator's day", () => {
  it("looks who saw what, checks the chain and the settings, with the keyboard alone", async () => {
    const page = await served.tab({ person: "administrator" });
    await page.goto("/audit");
    const hand = handOf(page);
    await served.seal();
    const check = named(page, "Check the chain");
    await check.waitFor();
    for (let presses = 0; presses < 40; presses++) {
      await hand.press("Tab");
      if (await check.evaluate((element) => element === document.activeElement)) break;
    }
    await hand.press("Enter");
    await page.getByText(/^The chain is whole/).waitFor();
    expect(hand.taken()).toBeLessThan(30);
    await page.goto("/settings");
    await page.getByText("America/New_York").first().waitFor();
    await page.goto(`/wards/${served.hospital.wards["3E"]}/round`);
    await page.getByRole("heading", { name: "Your role does not open this page" }).waitFor();
  }, 60_000);
});

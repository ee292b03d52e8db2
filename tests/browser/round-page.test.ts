import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { fillRound } from "../http/full-round.ts";
import { axeFindings } from "./axe.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let beds: Awaited<ReturnType<typeof fillRound>>;

beforeAll(async () => {
  served = await serveAlderBay();
  beds = await fillRound(served.desk);
}, 180_000);

afterAll(() => served?.close());

const address = () => `/wards/${served.hospital.wards["3E"]}/round`;

async function openRound(options: Parameters<Served["tab"]>[0] = {}): Promise<Page> {
  const page = await served.tab({ person: "bedside", ...options });
  await page.goto(address());
  await page.getByRole("article", { name: "Bed 10 BED-10" }).waitFor();
  return page;
}

const cardOf = (page: Page, bed: number): Locator => page.getByRole("article", { name: `Bed ${bed} BED-${bed}` });

async function notesOf(bed: keyof typeof beds) {
  const { notes } = await served.desk.ask(endpoints.readCatheter, { catheterId: beds[bed].catheterId });
  return notes.map(({ kind, outcome, indication, voidReason }) => ({ kind, outcome, indication, voidReason }));
}

describe("the round page", () => {
  it("shows what needs doing first, each state in words, and both day numbers", async () => {
    const page = await openRound();
    await page.getByRole("article").nth(8).waitFor();
    const cards = await page.getByRole("article").allInnerTexts();
    expect(cards).toHaveLength(9);
    const first = cards.slice(0, 4).map((text) => /Bed (\d+)/.exec(text)?.[1]);
    expect(first.sort()).toEqual(["10", "2", "4", "9"].sort());
    const text = await cardOf(page, 10).innerText();
    expect(text).toContain("Review overdue");
    expect(text).toContain("Past threshold");
    expect(text).toContain("Not confirmed");
    expect(text).toMatch(/Catheter day: day 4/);
    expect(text).toMatch(/Dwell time: 4 days, inserted Nov 17, 08:00/);
  });

  it("explains each mark with the sentence of the policy", async () => {
    const page = await openRound();
    const card = cardOf(page, 10);
    await card.getByText("Why these marks").click();
    expect(await card.getByRole("listitem").filter({ hasText: "Policy, version 1" }).count()).toBeGreaterThan(1);
  });

  it("keeps with one touch, shows it at once, and undoes it as a void with a reason", async () => {
    const page = await openRound();
    const card = cardOf(page, 9);
    await card.getByRole("button", { name: "Still needed: Perioperative use for selected surgery" }).click();
    await card.getByText(/^Recorded at 10:00: still needed, Perioperative/).waitFor();
    expect((await notesOf(9)).at(-1)).toEqual({
      ...{ kind: "review", outcome: "keep", indication: "perioperative", voidReason: null },
    });
    await card.getByRole("button", { name: "Undo" }).click();
    await card.getByText(/^Undone:/).waitFor();
    expect((await notesOf(9)).at(-1)?.voidReason).toBe("Undone right after it was recorded");
  });

  it("records that the prescriber is asked with two touches, another indication with two", async () => {
    const page = await openRound();
    const card = cardOf(page, 2);
    await card.getByRole("button", { name: "Other decision" }).click();
    await card.getByRole("button", { name: "Contact provider" }).click();
    await card.getByText(/^Recorded at 10:00: provider contacted/).waitFor();
    await card.getByRole("button", { name: "Other decision" }).click();
    await card.getByRole("button", { name: "Comfort at the end of life" }).click();
    await card.getByText(/still needed, Comfort at the end of life/).waitFor();
    expect((await notesOf(2)).map(({ outcome, indication }) => [outcome, indication])).toEqual([
      ["ask", null],
      ["keep", "end-of-life"],
    ]);
  });

  it("records that it was seen in place with one touch", async () => {
    const page = await openRound();
    await cardOf(page, 10).getByRole("button", { name: "Confirm in place" }).click();
    await cardOf(page, 10)
      .getByText(/^Recorded at 10:00: confirmed in place/)
      .waitFor();
    expect((await notesOf(10)).at(-1)?.kind).toBe("confirmation");
  });

  it("is done by the keyboard alone", async () => {
    const page = await openRound();
    const button = cardOf(page, 7).getByRole("button", { name: /^Still needed/ });
    for (let presses = 0; presses < 150; presses++) {
      await page.keyboard.press("Tab");
      if (await button.evaluate((element) => element === document.activeElement)) break;
    }
    await page.keyboard.press("Enter");
    await cardOf(page, 7)
      .getByText(/^Recorded at 10:00: still needed/)
      .waitFor();
  });

  it("loses nothing when the server does not answer: it is sent again and recorded once", async () => {
    const page = await openRound();
    const before = (await notesOf(3)).length;
    // The server records it, and its answer never arrives.
    await page.route("**/reviews", async (route) => {
      await route.fetch();
      await route.abort();
    });
    const card = cardOf(page, 3);
    await card.getByRole("button", { name: /^Still needed/ }).click();
    await card
      .getByRole("alert")
      .getByText(/The server does not answer. Nothing is lost/)
      .waitFor();
    await page.unroute("**/reviews");
    await card.getByRole("button", { name: "Send it again" }).click();
    await card.getByText(/^Recorded at 10:00/).waitFor();
    expect((await notesOf(3)).length).toBe(before + 1);
  });

  it("shows a refusal with its remedy at the catheter", async () => {
    const page = await openRound();
    const card = cardOf(page, 8);
    await card.waitFor();
    await served.desk.ask(endpoints.voidCatheter, {
      ...{ catheterId: beds[8].catheterId, seenVersion: 1, reason: "Never put in" },
    });
    await card.getByRole("button", { name: /^Still needed/ }).click();
    await card
      .getByRole("alert")
      .getByText(/This entry is marked as entered in error/)
      .waitFor();
    expect(await card.getByRole("alert").innerText()).toContain("Record it again if it was marked by mistake.");
  });

  it("looks back on a day that is over without anything to record", async () => {
    const page = await openRound();
    await page.getByRole("link", { name: "← The day before" }).click();
    await page.getByText("Thursday, November 19, 2026, as it was at the end of that day").waitFor();
    await page.getByRole("article").first().waitFor();
    expect(await page.getByRole("button", { name: /^Still needed/ }).count()).toBe(0);
    await page.getByRole("link", { name: "Today", exact: true }).click();
    await page
      .getByRole("button", { name: /^Still needed/ })
      .first()
      .waitFor();
  });

  it("has nothing for axe to find, also with an answer open", async () => {
    const page = await openRound();
    await cardOf(page, 4).getByRole("button", { name: "Other decision" }).click();
    await cardOf(page, 4).getByText("Why these marks").click();
    await cardOf(page, 4).getByRole("button", { name: "Catheter day" }).click();
    await cardOf(page, 4).getByText("How many days in a row").waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });

  it("prints one page for hand-over, by bed", async () => {
    const page = await openRound();
    await page.emulateMedia({ media: "print" });
    await page.getByRole("table", { name: "For handoff" }).waitFor();
    expect(await page.getByRole("article").first().isVisible()).toBe(false);
    const beds = await page.locator(".on-paper tbody td:first-child").allInnerTexts();
    expect(beds.slice(0, 3)).toEqual(["2", "3", "4"]);
    const pdf = await page.pdf({ format: "Letter" });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  });
});

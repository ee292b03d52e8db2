import { afterAll, beforeAll, describe, it } from "vitest";
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

const address = () => `/wards/${served.hospital.wards["3E"]}/round`;

describe("a round that is left open", () => {
  it("says that the day has changed when it was left open over midnight", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.clock.install({ time: new Date("2026-11-20T15:00:00Z") });
    await page.goto(address());
    await page.getByRole("article").first().waitFor();
    await page.clock.fastForward("15:00:00");
    await page.getByRole("alert").getByText("It is Saturday, November 21, 2026 now").waitFor();
    await page.getByText("This list is of Friday, November 20, 2026").waitFor();
  });

  it("shows what others record while it is open", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.clock.install({ time: new Date("2026-11-20T15:00:00Z") });
    await page.goto(address());
    const card = page.getByRole("article", { name: "Bed 6 BED-6" });
    await card.waitFor();
    await page.clock.runFor(1_000);
    await served.desk.ask(endpoints.correctWardStay, {
      ...{ wardStayId: await wardStayOf(beds[6].patientId), bed: "16", reason: "Another bed", seenVersion: 1 },
    });
    await served.seal();
    await page.clock.runFor(21_000);
    await page.getByRole("article", { name: "Bed 16 BED-6" }).waitFor();
  });
});

async function wardStayOf(patientId: number): Promise<number> {
  const { wardStays } = await served.desk.ask(endpoints.readPatient, { patientId });
  const [first] = wardStays;
  if (!first) throw new Error("the patient was on no ward");
  return first.wardStayId;
}

import { endpoints } from "../../shared/api/index.ts";
import type { Desk } from "./desk.ts";
import { movesWithFault, workOn } from "./import-work.ts";

let made = 0;
const fresh = () => `FULL-${++made}`;

/** Two imports with a refused line each: one that waits for a decision, and one that was stored without the line. */
export async function fillImports(desk: Desk): Promise<{ tried: number; stored: number }> {
  const send = async () => {
    const files = [
      { name: "moves.csv", text: movesWithFault(fresh) },
      { name: "notes.txt", text: "Not read." },
    ];
    const { importId } = await desk.ask(endpoints.receiveImport, { files });
    await workOn(desk.hospital.store);
    return importId;
  };
  const [tried, stored] = [await send(), await send()];
  await desk.ask(endpoints.decideImport, { importId: stored, decision: "apply", setAside: true });
  await workOn(desk.hospital.store);
  return { tried, stored };
}

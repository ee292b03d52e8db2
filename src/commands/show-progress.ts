import type { ImportProgress } from "../usecases/imports/intake-item.ts";
import type { CommandContext } from "./command.ts";

const words = { reading: "Reading", checking: "Checking", applying: "Storing" } as const;

/** Shows progress on one line of a terminal; on anything else, a line whenever a phase begins. */
export function showProgress({
  err,
  interactive,
}: Pick<CommandContext, "err" | "interactive">): (progress: ImportProgress) => void {
  let phase = "";
  return ({ phase: now, done, total }) => {
    const text = `${words[now]}: ${done}${total === null ? "" : ` of ${total}`} lines`;
    if (interactive) err(`\r\u001b[K${text}${done === total ? "\n" : ""}`);
    else if (phase !== now) err(`${words[now]} lines\n`);
    phase = now;
  };
}

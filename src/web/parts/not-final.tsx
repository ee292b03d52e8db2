import type { ReactNode } from "react";
import { notFinalWords } from "../../../shared/figure-words.ts";
import { Said } from "./said.tsx";

/** Words and a hollow mark at a figure that open cultures could still change; nothing at a final one. */
export function NotFinal({ open }: { open: number | null | undefined }): ReactNode {
  if (open === null || open === undefined || open === 0) return null;
  return (
    <span className="not-final">
      {" "}
      <span aria-hidden="true">○</span> <Said>{notFinalWords(open)}</Said>
    </span>
  );
}

import type { ReactNode } from "react";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { caseText } from "../../texts/case.ts";
import type { Determination } from "./case-rows.ts";

/** The open points on whose reading the answer hinges: what is in force, what it sets aside, and the other answer. */
export function Hinges({ hinges }: { hinges: Determination["hinges"] }): ReactNode {
  return (
    <div className="notice">
      <p>
        <strong>{caseText("otherReading")}</strong>
      </p>
      <ul>
        {hinges.map(({ point, reading, setAside, otherReading, otherAnswer }) => (
          <li key={`${point} ${otherReading}`}>
            <PageLink to="/rules#open-points">
              <Said>{point}</Said>
            </PageLink>
            . <Said>{caseText("inForce", { reading })}</Said>{" "}
            {setAside !== null && <Said>{caseText("setAside", { what: setAside })}</Said>}{" "}
            <Said>{caseText("otherAnswer", { reading: otherReading, answer: otherAnswer })}</Said>
          </li>
        ))}
      </ul>
    </div>
  );
}

import type { ReactNode } from "react";
import { listReadings } from "../../../../shared/api/editions.ts";
import type { EditionId } from "../../../../shared/edition-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { monthWords } from "../../parts/words.ts";
import { rulesText } from "../../texts/rules.ts";
import { ChooseReading } from "./choose-reading.tsx";

export type Readings = OutputOf<typeof listReadings>;

/** The readings of open points that the facility chose for an edition, and a form to choose another. */
export function ChosenReadings({ editionId }: { editionId: EditionId }): ReactNode {
  const asked = useAnswer(listReadings, { editionId });
  const { may } = useSession();
  return (
    <section aria-labelledby="chosen-readings">
      <h2 id="chosen-readings" tabIndex={-1}>
        {rulesText("chosen")}
      </h2>
      <p>{rulesText("chosenLead")}</p>
      <ShowAnswer asked={asked} what={rulesText("chosenWhat")}>
        {(answer) => (
          <>
            {answer.chosen.length === 0 ? <p>{rulesText("noneChosen")}</p> : <Chosen chosen={answer.chosen} />}
            {may("judge-cases") && <ChooseReading {...{ editionId, points: answer.points, done: asked.again }} />}
          </>
        )}
      </ShowAnswer>
    </section>
  );
}

function Chosen({ chosen }: { chosen: Readings["chosen"] }): ReactNode {
  const { time } = useSession();
  return (
    <WithNames what={rulesText("chosenWhat")}>
      {(nameOf) => (
        <ul className="plain-list">
          {chosen.map(({ point, reading, fromMonth, reason, recordedAt, recordedBy }) => (
            <li key={`${point} ${fromMonth}`} className="card">
              <h3 className="first-heading">
                <Said>{point}</Said>
              </h3>
              <p>
                <Said>{rulesText("chosenReading", { month: monthWords(fromMonth), reading })}</Said>
              </p>
              <p className="small">
                <Said>
                  {rulesText("chosenBy", {
                    name: nameOf(recordedBy),
                    when: time.short(recordedAt),
                    reason,
                  })}
                </Said>
              </p>
            </li>
          ))}
        </ul>
      )}
    </WithNames>
  );
}

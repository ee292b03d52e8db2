import type { ReactNode } from "react";
import { readEvents } from "../../../../shared/api/events.ts";
import type { Month } from "../../../../shared/day.ts";
import { EventsTable } from "../../parts/events-table.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { daysOfMonth } from "../../parts/words.ts";
import { infectionsText as text } from "../../texts/infections.ts";

/** What is told of an event of a ward. */
const shown = ["date", "patient", "criterion", "catheter", "organisms", "work", "disagreement"] as const;

/** The events of a ward and month. The view is recorded. */
export function WardEvents({ month, code }: { month: Month; code: string }): ReactNode {
  const asked = useAnswer(readEvents, daysOfMonth(month));
  return (
    <ShowAnswer asked={asked} what={text("eventsWhat")}>
      {(answer) => (
        <EventsTable
          {...{ answer, shown }}
          caption={text("eventsCaption", { ward: code })}
          ward={code}
          className="ledger inner many"
        />
      )}
    </ShowAnswer>
  );
}

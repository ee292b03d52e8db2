import { type ReactNode, useState } from "react";
import { listBaselines, listComparisons } from "../../../../shared/api/baselines.ts";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { baselinesText as text } from "../../texts/baselines.ts";
import { AddBaseline } from "./add-baseline.tsx";
import { AddOwnBaseline } from "./add-own-baseline.tsx";
import { BaselineList } from "./baseline-list.tsx";
import { ComparisonList } from "./comparison-list.tsx";
import { DoneNotice } from "./done-notice.tsx";
import { SetComparison } from "./set-comparison.tsx";
import { SettingsFrame } from "./settings-frame.tsx";

/** With what months are compared: the versions so far, the baselines, and how to add and set them for whom it is. */
export function BaselinesPage(): ReactNode {
  const { may } = useSession();
  const baselines = useAnswer(listBaselines, {});
  const comparisons = useAnswer(listComparisons, {});
  const [said, setSaid] = useState<{ readonly words: string; readonly times: number } | null>(null);
  const done = (words: string): void => {
    setSaid((before) => ({ words, times: (before?.times ?? 0) + 1 }));
    baselines.again();
    comparisons.again();
  };
  const times = said?.times ?? 0;
  const added = () => done(text("addedNotice"));
  return (
    <SettingsFrame title={text("title")}>
      <p>{text("lead")}</p>
      <DoneNotice words={said?.words ?? null} />
      <ShowAnswer asked={baselines} what={text("what")}>
        {({ baselines: known }) => (
          <ShowAnswer asked={comparisons} what={text("comparisonsWhat")}>
            {({ comparisons: versions }) => (
              <>
                <ComparisonList {...{ known, versions }} />
                <BaselineList known={known} />
                {may("set-baselines") && (
                  <>
                    <SetComparison key={`set-${times}`} {...{ known, versions }} done={() => done(text("setNotice"))} />
                    <AddOwnBaseline key={`own-${times}`} done={added} />
                    <AddBaseline key={`add-${times}`} done={added} />
                  </>
                )}
              </>
            )}
          </ShowAnswer>
        )}
      </ShowAnswer>
    </SettingsFrame>
  );
}

import type { ReactNode } from "react";
import { listSources } from "../../../../shared/api/import-sources.ts";
import { ownSourceName } from "../../../../shared/source-settings.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { sourceText } from "../../texts/import-sources.ts";
import { importsText } from "../../texts/imports.ts";

/** The source that files come from: the facility's own unless another is chosen. */
export function SourceField(props: {
  value: string | null;
  change: (sourceId: string | null) => void;
  faults: readonly FieldFault[];
}): ReactNode {
  const asked = useAnswer(listSources, {});
  return (
    <>
      <ShowAnswer asked={asked} what={sourceText("what")}>
        {({ sources }) => (
          <SelectField
            {...props}
            pointer="/sourceId"
            label={importsText("source")}
            help={importsText("sourceHelp")}
            choices={sources
              .filter(({ name }) => name !== ownSourceName)
              .map(({ sourceId, name }) => ({ value: String(sourceId), label: name }))}
            empty={ownSourceName}
          />
        )}
      </ShowAnswer>
      <p className="small">
        <PageLink to="/settings/sources">{importsText("sourceLink")}</PageLink>
      </p>
    </>
  );
}

import type { ReactNode } from "react";
import { fieldText } from "../texts/fields.ts";

/** Says that what the person wrote before is here again, and lets them start over. */
export function DraftNotice({ drop }: { drop: () => void }): ReactNode {
  return (
    <div role="status" className="notice hint row">
      <p>
        <strong>{fieldText("draftTitle")}.</strong> {fieldText("draftDetail")}
      </p>
      <button type="button" onClick={drop}>
        {fieldText("draftDrop")}
      </button>
    </div>
  );
}

import type { ReactNode } from "react";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { longDayWords } from "../../parts/words.ts";
import { storyText } from "../../texts/story.ts";
import type { Story } from "./story-rows.ts";

/** What the picture shows of the reviews, as a table. */
export function ReviewDays({ story }: { story: Story }): ReactNode {
  const { wardCode } = useSession();
  return (
    <details>
      <summary>{storyText("reviewDays")}</summary>
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">{storyText("columnDay")}</th>
            <th scope="col">{storyText("columnWard")}</th>
            <th scope="col">
              <Term name="eligibility-day">{storyText("columnNumber")}</Term>
            </th>
            <th scope="col">
              <Term name="review">{storyText("columnReview")}</Term>
            </th>
          </tr>
        </thead>
        <tbody>
          {story.days.map(({ day, wardId, eligibilityDay, review }) => (
            <tr key={day}>
              <th scope="row">{longDayWords(day)}</th>
              <td>{wardId === null ? "" : wardCode(wardId)}</td>
              <td>{eligibilityDay ?? ""}</td>
              <td>{storyText(review)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

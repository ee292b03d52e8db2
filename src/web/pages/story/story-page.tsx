import type { ReactNode } from "react";
import { readCatheter } from "../../../../shared/api/catheters.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession, WithWardNames } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { storyText } from "../../texts/story.ts";
import { CatheterActs } from "./catheter-acts.tsx";
import { Entries } from "./entries.tsx";
import { ReviewDays } from "./review-days.tsx";
import { StoryHead } from "./story-head.tsx";
import { StoryPicture } from "./story-picture.tsx";
import type { Story } from "./story-rows.ts";

/** Everything about one catheter: a picture of its days, then its entries with their corrections. */
export function StoryPage({ found }: PageProps): ReactNode {
  const story = useAnswer(readCatheter, { catheterId: Number(found.catheterId) });
  return (
    <Page title={storyText("title")}>
      <ShowAnswer asked={story} what={storyText("what")}>
        {(value) => (
          <WithNames what={storyText("what")}>
            {(nameOf) => (
              <WithWardNames wardIds={value.wards.map(({ wardId }) => wardId)}>
                <Shown story={value} nameOf={nameOf} again={story.again} />
              </WithWardNames>
            )}
          </WithNames>
        )}
      </ShowAnswer>
    </Page>
  );
}

function Shown(props: { story: Story; nameOf: NameOf; again: () => void }): ReactNode {
  const { story, nameOf, again } = props;
  const { may } = useSession();
  return (
    <>
      <StoryHead story={story} />
      <Ways story={story} />
      {story.voidReason !== null && (
        <p className="notice">
          <Said>{storyText("voided", { reason: story.voidReason })}</Said>
        </p>
      )}
      {story.days.length > 0 && (
        <>
          <StoryPicture story={story} />
          <ReviewDays story={story} />
        </>
      )}
      <Entries {...{ story, nameOf, again }} />
      {may("record-care") && story.voidReason === null && (
        <CatheterActs key={story.version} story={story} again={again} />
      )}
    </>
  );
}

function Ways({ story }: { story: Story }): ReactNode {
  const { may, wardCode, wards } = useSession();
  const wardId = story.wards.at(-1)?.wardId;
  const isIn = story.removedAt === null && story.removedAfterAt === null && story.voidReason === null;
  const own = `/patients/${story.patientId}/catheters/${story.catheterId}`;
  return (
    <p className="row on-screen">
      {isIn && may("record-care") && (
        <>
          <PageLink to={`${own}/care`} className="button">
            {storyText("careCheck")}
          </PageLink>
          <PageLink to={`${own}/removal`} className="button">
            {storyText("remove")}
          </PageLink>
        </>
      )}
      {/* The patient may be by now on a ward whose round the person does not open. */}
      {wardId !== undefined && wards.some((ward) => ward.wardId === wardId) && (
        <PageLink to={`/wards/${wardId}/round`}>{storyText("toRound", { ward: wardCode(wardId) })}</PageLink>
      )}
      <PageLink to={`/patients/${story.patientId}`}>{storyText("toPatient")}</PageLink>
    </p>
  );
}

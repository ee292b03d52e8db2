import type { ReactNode } from "react";
import { Frame } from "../parts/frame.tsx";
import { PageLink } from "../parts/page-link.tsx";

/** What an address shows at which there is no page. */
export function UnknownPage(): ReactNode {
  return (
    <Frame title="There is no such page">
      <p>The address may be written wrongly. A month has an address such as /months/2026-11.</p>
      <p>
        <PageLink to="/">Show this month</PageLink>
      </p>
    </Frame>
  );
}

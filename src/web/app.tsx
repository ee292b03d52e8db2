import { type ReactNode, Suspense } from "react";
import { permissions } from "../../shared/permissions.ts";
import { UnknownPage } from "./pages/unknown-page.tsx";
import { useAddress } from "./parts/address.ts";
import { FaultBoundary } from "./parts/fault-boundary.tsx";
import { Page } from "./parts/page.tsx";
import { PageLink } from "./parts/page-link.tsx";
import { Said } from "./parts/said.tsx";
import { type Session, WithSession } from "./parts/session.tsx";
import { Shell } from "./parts/shell.tsx";
import { routeAt } from "./routes.ts";
import { shellText } from "./texts/shell.ts";

/** All pages with what stands around them. */
export function App(): ReactNode {
  return (
    <WithSession around={(content) => <Shell session={null}>{content}</Shell>}>
      {(session) => (
        <Shell session={session}>
          <Shown session={session} />
        </Shell>
      )}
    </WithSession>
  );
}

function Shown({ session }: { session: Session }): ReactNode {
  const address = useAddress();
  const at = routeAt(address);
  if (at === null) return <UnknownPage />;
  const { route, props } = at;
  if (route.permission !== null && !session.may(route.permission)) {
    return <NotYours permission={permissions[route.permission]} />;
  }
  return (
    <FaultBoundary key={address.replace(/\?.*/, "")}>
      <Suspense
        fallback={
          <p role="status" className="waiting">
            {shellText("loadingPage")}
          </p>
        }
      >
        <route.Page {...props} />
      </Suspense>
    </FaultBoundary>
  );
}

function NotYours({ permission }: { permission: string }): ReactNode {
  return (
    <Page title={shellText("notYours")}>
      <div className="notice">
        <p>
          <Said>{shellText("notYoursDetail", { permission: permission.toLowerCase() })}</Said>
        </p>
        <p>{shellText("notYoursRemedy")}</p>
      </div>
      <p>
        <PageLink to="/">{shellText("toHome")}</PageLink>
      </p>
    </Page>
  );
}

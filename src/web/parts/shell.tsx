import type { ReactNode } from "react";
import { shellText } from "../texts/shell.ts";
import { roleText } from "../texts/words.ts";
import { useAddress } from "./address.ts";
import { PageLink } from "./page-link.tsx";
import { PersonChooser } from "./person-chooser.tsx";
import { Said } from "./said.tsx";
import type { Session } from "./session.tsx";

/** What every page has around it: who you are, the pages that your role opens, and the caution. */
export function Shell({ session, children }: { session: Session | null; children: ReactNode }): ReactNode {
  return (
    <>
      <a className="skip" href="#content">
        {shellText("skip")}
      </a>
      {session?.facility.demo && (
        <div className="demo-band" role="note">
          <p>{shellText("demoBand", { facility: session.facility.name })}</p>
        </div>
      )}
      <header className="top">
        <PageLink to="/" className="step name">
          {shellText("product")}
        </PageLink>
        {session && (
          <>
            <p className="place">
              <Said>{session.facility.name}</Said>
            </p>
            <Who session={session} />
            <Pages session={session} />
          </>
        )}
      </header>
      <main id="content" tabIndex={-1}>
        {children}
      </main>
      <footer>
        <p>{shellText("caution")}</p>
        <p className="on-screen">
          <PageLink to="/terms">{shellText("terms")}</PageLink>{" "}
          {session?.may("see-facility") && <PageLink to="/rules">{shellText("rules")}</PageLink>}{" "}
          <a className="step" href="/docs">
            {shellText("programs")}
          </a>
        </p>
      </footer>
    </>
  );
}

function Who({ session }: { session: Session }): ReactNode {
  const { me, facility } = session;
  if (facility.demo) return <PersonChooser me={me} />;
  const role = me.roles.map((one) => roleText(one)).join(", ");
  return (
    <p className="who">
      <Said>{shellText("roleOf", { name: me.name, role })}</Said>
    </p>
  );
}

function Pages({ session }: { session: Session }): ReactNode {
  const path = useAddress().replace(/\?.*/, "");
  const round = session.wards.find((ward) => session.me.wardIds.includes(ward.wardId)) ?? session.wards[0];
  const pages = [
    { to: "/", under: /^\/$/, words: shellText("home"), shown: true },
    {
      to: `/wards/${round?.wardId}/round`,
      under: /^\/wards\/\d+\/round/,
      words: shellText("round"),
      shown: round !== undefined && session.may("see-patients"),
    },
    {
      to: `/wards/${round?.wardId}/patients`,
      under: /^\/(wards\/\d+\/(patients|admission)|patients)/,
      words: shellText("patients"),
      shown: round !== undefined && session.may("see-patients"),
    },
    { to: "/cases", under: /^\/cases/, words: shellText("cases"), shown: session.may("judge-cases") },
    { to: "/months", under: /^\/months/, words: shellText("month"), shown: session.may("see-counts") },
    {
      to: "/comparison",
      under: /^\/comparison/,
      words: shellText("comparison"),
      shown: session.may("compare-wards"),
    },
    { to: "/imports", under: /^\/imports/, words: shellText("imports"), shown: session.may("import-records") },
    { to: "/settings", under: /^\/settings/, words: shellText("settings"), shown: session.may("see-policy") },
    { to: "/audit", under: /^\/audit/, words: shellText("audit"), shown: session.may("see-audit") },
  ];
  return (
    <nav aria-label={shellText("nav")}>
      <ul>
        {pages
          .filter(({ shown }) => shown)
          .map(({ to, under, words }) => (
            <li key={to}>
              <PageLink to={to} isCurrent={under.test(path)}>
                {words}
              </PageLink>
            </li>
          ))}
      </ul>
    </nav>
  );
}

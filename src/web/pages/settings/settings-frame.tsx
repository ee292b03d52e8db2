import type { ReactNode } from "react";
import { useAddress } from "../../parts/address.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { settingsText } from "../../texts/settings.ts";

/** A page of the settings: what it is about, and the way to the others. */
export function SettingsFrame({ title, children }: { title: string; children: ReactNode }): ReactNode {
  const { may } = useSession();
  const path = useAddress().replace(/\?.*/, "");
  const pages = [
    { to: "/settings", words: settingsText("overview") },
    { to: "/settings/policy", words: settingsText("policyPage") },
    { to: "/settings/wards", words: settingsText("wardsPage") },
    { to: "/settings/census", words: settingsText("censusPage") },
    { to: "/settings/scope", words: settingsText("scopePage") },
    { to: "/settings/baselines", words: settingsText("baselinesPage") },
    ...(may("judge-cases") ? [{ to: "/settings/words", words: settingsText("wordsPage") }] : []),
    ...(may("import-records") ? [{ to: "/settings/sources", words: settingsText("sourcesPage") }] : []),
  ];
  return (
    <Page title={title}>
      <nav aria-label={settingsText("pages")} className="on-screen settings-pages">
        <ul className="plain-list row">
          {pages.map(({ to, words }) => (
            <li key={to}>
              <PageLink to={to} isCurrent={to === path}>
                {words}
              </PageLink>
            </li>
          ))}
        </ul>
      </nav>
      {children}
    </Page>
  );
}

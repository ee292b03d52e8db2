import { type ComponentType, lazy } from "react";
import type { Permission } from "../../shared/permissions.ts";
import { HomePage } from "./pages/home/home-page.tsx";
import { RoundPage } from "./pages/round/round-page.tsx";

/** What a page is told by its address. */
export interface PageProps {
  /** The numbers and words in the path, by name. */
  readonly found: Readonly<Record<string, string>>;
  /** What stands after the question mark. */
  readonly question: URLSearchParams;
}

interface Route {
  readonly address: RegExp;
  /** Whom the page is for; null: everybody. */
  readonly permission: Permission | null;
  readonly Page: ComponentType<PageProps>;
}

/** Every page: its address, whom it is for, and what it shows. The round and the home page come with the first load. */
const routes: readonly Route[] = [
  { address: /^\/$/, permission: null, Page: HomePage },
  { address: /^\/wards\/(?<wardId>[1-9]\d{0,9})\/round$/, permission: "see-patients", Page: RoundPage },
  {
    address: /^\/months(\/(?<month>\d{4}-\d{2}))?$/,
    permission: "see-counts",
    Page: lazily(() => import("./pages/month/month-page.tsx").then((m) => m.MonthPage)),
  },
  {
    address: /^\/comparison$/,
    permission: "compare-wards",
    Page: lazily(() => import("./pages/comparison/comparison-page.tsx").then((m) => m.ComparisonPage)),
  },
  {
    address: /^\/wards\/(?<wardId>[1-9]\d{0,9})\/patients$/,
    permission: "see-patients",
    Page: lazily(() => import("./pages/patients/patients-page.tsx").then((m) => m.PatientsPage)),
  },
  {
    address: /^\/wards\/(?<wardId>[1-9]\d{0,9})\/admission$/,
    permission: "record-care",
    Page: lazily(() => import("./pages/admission/admission-page.tsx").then((m) => m.AdmissionPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})$/,
    permission: "see-patients",
    Page: lazily(() => import("./pages/record/record-page.tsx").then((m) => m.RecordPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/catheters\/(?<catheterId>[1-9]\d{0,9})$/,
    permission: "see-patients",
    Page: lazily(() => import("./pages/story/story-page.tsx").then((m) => m.StoryPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/stays\/(?<stayId>[1-9]\d{0,9})\/insertion$/,
    permission: "record-care",
    Page: lazily(() => import("./pages/insertion/insertion-page.tsx").then((m) => m.InsertionPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/stays\/(?<stayId>[1-9]\d{0,9})\/arrival$/,
    permission: "record-care",
    Page: lazily(() => import("./pages/arrival/arrival-page.tsx").then((m) => m.ArrivalPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/catheters\/(?<catheterId>[1-9]\d{0,9})\/care$/,
    permission: "record-care",
    Page: lazily(() => import("./pages/care/care-page.tsx").then((m) => m.CarePage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/catheters\/(?<catheterId>[1-9]\d{0,9})\/removal$/,
    permission: "record-care",
    Page: lazily(() => import("./pages/removal/removal-page.tsx").then((m) => m.RemovalPage)),
  },
  {
    address: /^\/patients\/(?<patientId>[1-9]\d{0,9})\/cultures$/,
    permission: "see-patients",
    Page: lazily(() => import("./pages/cultures/cultures-page.tsx").then((m) => m.CulturesPage)),
  },
  {
    address: /^\/cases$/,
    permission: "judge-cases",
    Page: lazily(() => import("./pages/cases/cases-page.tsx").then((m) => m.CasesPage)),
  },
  {
    address: /^\/cases\/(?<caseId>[1-9]\d{0,9})$/,
    permission: "judge-cases",
    Page: lazily(() => import("./pages/case/case-page.tsx").then((m) => m.CasePage)),
  },
  {
    address: /^\/infections$/,
    permission: "see-counts",
    Page: lazily(() => import("./pages/infections/infections-page.tsx").then((m) => m.InfectionsPage)),
  },
  {
    address: /^\/rules$/,
    permission: "see-facility",
    Page: lazily(() => import("./pages/rules/rules-page.tsx").then((m) => m.RulesPage)),
  },
  {
    address: /^\/imports$/,
    permission: "import-records",
    Page: lazily(() => import("./pages/imports/imports-page.tsx").then((m) => m.ImportsPage)),
  },
  {
    address: /^\/imports\/(?<importId>[1-9]\d{0,9})$/,
    permission: "import-records",
    Page: lazily(() => import("./pages/imports/import-page.tsx").then((m) => m.ImportPage)),
  },
  {
    address: /^\/audit$/,
    permission: "see-audit",
    Page: lazily(() => import("./pages/audit/audit-page.tsx").then((m) => m.AuditPage)),
  },
  {
    address: /^\/settings$/,
    permission: "see-policy",
    Page: lazily(() => import("./pages/settings/settings-page.tsx").then((m) => m.SettingsPage)),
  },
  {
    address: /^\/style$/,
    permission: null,
    Page: lazily(() => import("./pages/style/style-page.tsx").then((m) => m.StylePage)),
  },
  {
    address: /^\/settings\/policy$/,
    permission: "see-policy",
    Page: lazily(() => import("./pages/settings/policy-page.tsx").then((m) => m.PolicyPage)),
  },
  {
    address: /^\/settings\/wards$/,
    permission: "see-wards",
    Page: lazily(() => import("./pages/settings/wards-page.tsx").then((m) => m.WardsPage)),
  },
  {
    address: /^\/settings\/wards\/(?<wardId>[1-9]\d{0,9})$/,
    permission: "see-wards",
    Page: lazily(() => import("./pages/settings/ward-page.tsx").then((m) => m.WardPage)),
  },
  {
    address: /^\/settings\/baselines$/,
    permission: "see-baselines",
    Page: lazily(() => import("./pages/settings/baselines-page.tsx").then((m) => m.BaselinesPage)),
  },
  {
    address: /^\/settings\/census$/,
    permission: "see-facility",
    Page: lazily(() => import("./pages/settings/census-page.tsx").then((m) => m.CensusPage)),
  },
  {
    address: /^\/settings\/scope$/,
    permission: "see-wards",
    Page: lazily(() => import("./pages/settings/scope-page.tsx").then((m) => m.ScopePage)),
  },
  {
    address: /^\/settings\/words$/,
    permission: "judge-cases",
    Page: lazily(() => import("./pages/words/words-page.tsx").then((m) => m.WordsPage)),
  },
  {
    address: /^\/settings\/sources$/,
    permission: "import-records",
    Page: lazily(() => import("./pages/settings/sources-page.tsx").then((m) => m.SourcesPage)),
  },
  {
    address: /^\/terms$/,
    permission: null,
    Page: lazily(() => import("./pages/terms-page.tsx").then((m) => m.TermsPage)),
  },
];

/** The page at an address, and what the address tells it; null when there is none. */
export function routeAt(address: string): { route: Route; props: PageProps } | null {
  const [path = "", question = ""] = address.split("?");
  for (const route of routes) {
    const match = route.address.exec(path);
    if (match) return { route, props: { found: { ...match.groups }, question: new URLSearchParams(question) } };
  }
  return null;
}

function lazily(load: () => Promise<ComponentType<PageProps>>): ComponentType<PageProps> {
  return lazy(async () => ({ default: await load() }));
}

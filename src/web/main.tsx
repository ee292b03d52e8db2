import { type ReactNode, StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { month as monthText } from "../../shared/day.ts";
import { MonthPage } from "./pages/month-page.tsx";
import { UnknownPage } from "./pages/unknown-page.tsx";
import { useAddress } from "./parts/address.ts";

/** Every page: its address, and what it shows there. */
const pages: readonly { address: RegExp; show: (found: Readonly<Record<string, string>>) => ReactNode }[] = [
  { address: /^\/$/, show: () => <MonthPage asked={null} /> },
  { address: /^\/months\/(?<month>\d{4}-\d{2})$/, show: ({ month }) => showMonth(month) },
];

function showMonth(text: string | undefined): ReactNode {
  const read = monthText.safeParse(text);
  return read.success ? <MonthPage key={read.data} asked={read.data} /> : <UnknownPage />;
}

function App(): ReactNode {
  const path = useAddress();
  for (const { address, show } of pages) {
    const found = address.exec(path);
    if (found) return show(found.groups ?? {});
  }
  return <UnknownPage />;
}

const root = document.getElementById("root");
if (!root) throw new Error("The page has no place for its content");
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

/** The language that is generated from the texts for tests. */
export const pseudoLanguage = "en-XA";

/** Where the tests' choice is kept for the time of the tab. */
const kept = "dwell-language";

/** The language of this visit: US English, or the pseudo-language when the address asks for it once. */
export const language = chosenLanguage();

function chosenLanguage(): string {
  // Pictures of figures are also drawn where there is no window.
  if (typeof location === "undefined") return "en-US";
  const asked = new URLSearchParams(location.search).get("language");
  if (asked === pseudoLanguage) sessionStorage.setItem(kept, asked);
  return sessionStorage.getItem(kept) ?? "en-US";
}

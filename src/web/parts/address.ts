import { useSyncExternalStore } from "react";

const changed = new EventTarget();

/** A person has gone to another page, and it has not been shown yet. */
let isGoing = false;

/**
 * Goes to another address of the page without loading it anew. `replace` puts the address right where nobody asked to
 * go anywhere: it leaves no step to go back to.
 */
export function goTo(path: string, { replace = false }: { replace?: boolean } = {}): void {
  if (replace) history.replaceState(null, "", path);
  else history.pushState(null, "", path);
  isGoing = !replace;
  changed.dispatchEvent(new Event("address"));
}

/** Whether a person has just gone to the page that is shown; true once: then the page begins at its heading. */
export function hasJustGone(): boolean {
  const was = isGoing;
  isGoing = false;
  return was;
}

/** The path of the address with its question, kept up to date: `/wards/3/round?day=2026-11-20`. */
export function useAddress(): string {
  return useSyncExternalStore(listen, () => location.pathname + location.search);
}

function listen(onChange: () => void): () => void {
  const onStep = (): void => {
    isGoing = true;
    onChange();
  };
  changed.addEventListener("address", onChange);
  addEventListener("popstate", onStep);
  return () => {
    changed.removeEventListener("address", onChange);
    removeEventListener("popstate", onStep);
  };
}

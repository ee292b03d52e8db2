import { askEarly } from "./parts/early-questions.ts";

askEarly(location.pathname + location.search);
// Not awaited: what follows shares modules with this one, and would wait for it to end.
void drawn().then(() => import("./main.tsx"));

/**
 * Resolves when the words of the page itself have been drawn, which says at once that it is on its way: what follows keeps a
 * slow device busy. A window that nobody sees draws nothing and does not wait.
 */
function drawn(): Promise<void> {
  return new Promise((resolve) => {
    if (document.visibilityState === "hidden") resolve();
    else requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, 150);
  });
}

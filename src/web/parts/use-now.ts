import { useEffect, useState } from "react";

/** The present instant, looked at again every `stepMs` and whenever the page comes to the front again. */
export function useNow(now: () => number, stepMs: number): number {
  const [at, setAt] = useState(now);
  useEffect(() => {
    const look = (): void => setAt(now());
    const timer = setInterval(look, stepMs);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [now, stepMs]);
  return at;
}

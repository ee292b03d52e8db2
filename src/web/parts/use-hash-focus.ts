import { useEffect } from "react";

/** Goes to the part that the address names behind its `#`, once it is on the page. The part needs `tabIndex={-1}`. */
export function useHashFocus(): void {
  useEffect(() => {
    const part = document.getElementById(location.hash.slice(1));
    if (!part) return;
    part.focus();
    part.scrollIntoView({ block: "start" });
  }, []);
}

import { useCallback, useEffect, useState } from "react";

/** How long a draft is kept on a device that other people use too. Common practice. */
const keptHours = 12;

interface Kept<T> {
  readonly personId: number;
  readonly at: number;
  readonly value: T;
}

/**
 * What a person is about to record, kept on this device at every change, so that a reload, a break or a lost connection
 * loses nothing. It belongs to the person who writes it, is forgotten after half a day and when it is `clear`ed. `name`
 * names the record by numbers only, such as `insert-1204`; no identifier of a patient may stand in it.
 */
export function useDraft<T>(
  name: string,
  empty: T,
  personId: number,
): {
  readonly draft: T;
  readonly change: (part: Partial<T>) => void;
  readonly clear: () => void;
  /** The draft was there when the page opened. */
  readonly wasKept: boolean;
} {
  const place = `dwell-draft-${name}`;
  const [first] = useState(() => readDraft<T>(place, personId));
  const [draft, setDraft] = useState<T>(() => ({ ...empty, ...first }));
  const [isChanged, setChanged] = useState(false);
  useEffect(() => {
    const kept: Kept<T> = { personId, at: Date.now(), value: draft };
    if (isChanged) localStorage.setItem(place, JSON.stringify(kept));
  }, [draft, isChanged, place, personId]);
  const change = useCallback((part: Partial<T>) => {
    setChanged(true);
    setDraft((before) => ({ ...before, ...part }));
  }, []);
  const clear = useCallback(() => {
    setChanged(false);
    localStorage.removeItem(place);
  }, [place]);
  return { draft, change, clear, wasKept: first !== null };
}

/** The draft that was kept here by this person and is not too old; others are removed. */
function readDraft<T>(place: string, personId: number): T | null {
  const text = localStorage.getItem(place);
  if (text === null) return null;
  const kept = JSON.parse(text) as Kept<T>;
  if (kept.personId === personId && Date.now() - kept.at < keptHours * 3_600_000) return kept.value;
  localStorage.removeItem(place);
  return null;
}

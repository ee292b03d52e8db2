const kept = "dwell-demo-person";

/** In the demo, the number of the person who is played in this browser; null: whom the server takes. */
function playedPerson(): number | null {
  const text = localStorage.getItem(kept);
  return text !== null && /^[1-9]\d{0,8}$/.test(text) ? Number(text) : null;
}

/** How a request says who is played. */
export function personHeaders(): Record<string, string> {
  const person = playedPerson();
  return person === null ? {} : { "x-demo-person": String(person) };
}

/** Plays another person of the demo from the next page on. */
export function playPerson(personId: number): void {
  localStorage.setItem(kept, String(personId));
}

import type { PatientLine } from "../../domain/intake/intake-line.ts";
import type { CultureChange, CultureChanges, Cultures } from "../../domain/intake/plan-cultures.ts";
import { signsOf } from "../../store/signs.ts";
import { specimensOf } from "../../store/specimens.ts";
import type { Read } from "../../store/store.ts";

const none: Cultures = { specimens: [], signs: [] };

/** Specimens and signs of surviving patients, as the lines of one group after another make them. */
export class PatientCultures {
  readonly #now: Map<number, Cultures>;
  readonly #changes: CultureChanges[] = [];

  private constructor(recorded: Map<number, Cultures>) {
    this.#now = recorded;
  }

  /** Loads what is recorded of the patients about whose specimens or signs lines speak. */
  static async load(
    read: Read,
    groups: readonly { readonly survivorId: number | undefined; readonly lines: readonly PatientLine[] }[],
  ): Promise<PatientCultures> {
    const recorded = new Map<number, Cultures>();
    for (const { survivorId, lines } of groups) {
      if (survivorId === undefined || recorded.has(survivorId) || !lines.some(isOfCultures)) continue;
      recorded.set(survivorId, {
        specimens: await specimensOf(read, [survivorId]),
        signs: await signsOf(read, [survivorId]),
      });
    }
    return new PatientCultures(recorded);
  }

  of(survivorId: number): Cultures {
    return this.#now.get(survivorId) ?? none;
  }

  become(survivorId: number, changes: CultureChanges): void {
    const { specimens, signs } = this.of(survivorId);
    this.#now.set(survivorId, {
      specimens: changed(specimens, changes.specimens),
      signs: changed(signs, changes.signs),
    });
    this.#changes.push(changes);
  }

  /** Everything that became of them, in order. */
  changes(): CultureChanges {
    return {
      specimens: this.#changes.flatMap(({ specimens }) => specimens),
      signs: this.#changes.flatMap(({ signs }) => signs),
    };
  }
}

function isOfCultures({ file }: PatientLine): boolean {
  return file === "specimens.csv" || file === "signs.csv";
}

function changed<T extends { readonly id: number }>(before: readonly T[], changes: readonly CultureChange<T>[]): T[] {
  const entries = new Map(before.map((entry) => [entry.id, entry]));
  for (const { now } of changes) entries.set(now.id, now);
  return [...entries.values()];
}

import { describe, expect, it } from "vitest";
import { oneAtATime, together } from "../../src/store/queue.ts";
import { gate } from "../databases/gate.ts";

describe("work that is done one at a time", () => {
  it("keeps the order in which it came, and never overlaps", async () => {
    const queue = oneAtATime();
    const log: string[] = [];
    const piece = (name: string, turns: number) =>
      queue(async () => {
        log.push(`${name} begins`);
        for (let i = 0; i < turns; i++) await Promise.resolve();
        log.push(`${name} ends`);
        return name;
      });
    expect(await Promise.all([piece("a", 20), piece("b", 1), piece("c", 5)])).toEqual(["a", "b", "c"]);
    expect(log).toEqual(["a begins", "a ends", "b begins", "b ends", "c begins", "c ends"]);
  });

  it("goes on after a failure, which only its own caller hears of", async () => {
    const queue = oneAtATime();
    const failed = queue(async () => {
      throw new Error("no");
    });
    const next = queue(async () => "yes");
    await expect(failed).rejects.toThrow("no");
    expect(await next).toBe("yes");
  });

  it("does not start the next piece before the last one is done", async () => {
    const queue = oneAtATime();
    const hold = gate();
    let started = false;
    const first = queue(() => hold.opened);
    const second = queue(async () => {
      started = true;
    });
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(started).toBe(false);
    hold.open();
    await Promise.all([first, second]);
    expect(started).toBe(true);
  });

  it("lets the event loop turn between two pieces that wait for nothing", async () => {
    const queue = oneAtATime();
    let turns = 0;
    let counting = true;
    const count = () => {
      turns += 1;
      if (counting) setImmediate(count);
    };
    setImmediate(count);
    const before = await Promise.all(Array.from({ length: 20 }, () => queue(async () => turns)));
    counting = false;
    expect(new Set(before).size).toBe(20);
  });

  it("is one queue for each that was made", async () => {
    const hold = gate();
    const stuck = oneAtATime()(() => hold.opened);
    expect(await oneAtATime()(async () => "free")).toBe("free");
    hold.open();
    await stuck;
  });
});

describe("pieces that are done together", () => {
  it("are those that came while an earlier lot was done, at most a hundred", async () => {
    const lots: number[][] = [];
    const hold = gate();
    const add = together<number>(async (pieces) => {
      lots.push([...pieces]);
      await hold.opened;
    }, 100);
    const first = add(0);
    await Promise.resolve();
    const more = Array.from({ length: 150 }, (_, i) => add(i + 1));
    hold.open();
    await Promise.all([first, ...more]);
    expect(lots.map((lot) => lot.length)).toEqual([1, 100, 50]);
    expect(lots.flat()).toEqual(Array.from({ length: 151 }, (_, i) => i));
  });

  it("resolve when their lot is done, not before", async () => {
    const hold = gate();
    const log: string[] = [];
    const add = together<string>(async () => {
      await hold.opened;
      log.push("stored");
    }, 100);
    const added = add("a").then(() => log.push("answered"));
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(log).toEqual([]);
    hold.open();
    await added;
    expect(log).toEqual(["stored", "answered"]);
  });

  it("fail with their lot, and the next lot is tried all the same", async () => {
    const add = together<string>(async (pieces) => {
      if (pieces.includes("bad")) throw new Error("the disk is full");
    }, 100);
    await add("good");
    const outcomes = await Promise.allSettled([add("bad"), add("beside")]);
    expect(outcomes.map(({ status }) => status)).toEqual(["rejected", "rejected"]);
    await add("later");
  });
});

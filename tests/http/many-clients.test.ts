import { Agent, get } from "node:http";
import { afterAll, beforeAll, expect, it } from "vitest";
import { apiBase } from "../../shared/api-base.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";

const clients = 20;
const requestsEach = 8;

onEachDatabase("many clients at once", (fresh) => {
  let door: Door;
  let base: string;
  beforeAll(async () => {
    door = await openDoor(await fresh());
    base = await door.app.listen({ host: "127.0.0.1", port: 0 });
  });
  afterAll(() => door?.close());

  function ask(agent: Agent): Promise<number> {
    const headers = { "x-demo-person": String(door.hospital.people.bedside) };
    const url = `${base}${apiBase}/wards`;
    return new Promise((resolve, reject) => {
      get(url, { agent, headers }, (response) => {
        response.resume();
        response.on("end", () => resolve(response.statusCode ?? 0));
      }).on("error", reject);
    });
  }

  it("are all served: nobody waits for a first answer while others get one after another", async () => {
    const answers: number[] = [];
    const client = async (_: unknown, number: number) => {
      const agent = new Agent({ keepAlive: true, maxSockets: 1 });
      for (let i = 0; i < requestsEach; i++) {
        expect(await ask(agent)).toBe(200);
        answers.push(number);
      }
      agent.destroy();
    };
    await Promise.all(Array.from({ length: clients }, client));
    // The place at which each client had its first answer; served in turns, all have one before anybody has the sixth.
    const firsts = Array.from({ length: clients }, (_, number) => answers.indexOf(number));
    const untilAllHadOne = answers.slice(0, Math.max(...firsts));
    const most = Math.max(...firsts.map((_, number) => untilAllHadOne.filter((one) => one === number).length));
    expect(most).toBeLessThan(6);
  });
});

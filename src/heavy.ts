import { parentPort, workerData } from "node:worker_threads";
import { documentMaker } from "./documents/document-maker.ts";
import { answerThread, type ThreadData } from "./http/heavy/heavy-threads.ts";
import { heavyWorkHere } from "./http/heavy/heavy-work.ts";
import { openStore } from "./store/open-store.ts";

// The program of a thread that does heavy work: see src/http/heavy. The main thread ends it.
const { databaseUrl, browserPath, version } = workerData as ThreadData;
if (!parentPort) throw new Error("this program runs as a thread of the service");
const store = openStore(databaseUrl);
answerThread(parentPort, heavyWorkHere({ store, documents: documentMaker({ version, browserPath }) }));

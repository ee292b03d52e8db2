/** A process of its own that migrates the database named on its command line, and prints what it applied. */
import { migrate } from "../../src/store/migrate.ts";

const [url = ""] = process.argv.slice(2);
process.stdout.write("started\n");
process.stdout.write(`${JSON.stringify(await migrate(url))}\n`);

import { catalogue } from "./catalogue.ts";

export const figureText = catalogue("figures", { missing: "missing" });

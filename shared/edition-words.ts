import { z } from "zod";
import { words } from "./vocabulary.ts";

/** The published editions of the definitions that are held here. */
export const editionNames = {
  "us-2024": "United States, CDC Patient Safety Component Manual, January 2024",
  "ecdc-2017": "European Centre for Disease Prevention and Control, HAI-Net, 2017",
} as const;
export const editionId = z.enum(words(editionNames));
export type EditionId = z.infer<typeof editionId>;

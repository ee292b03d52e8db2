import { z } from "zod";
import { organismGroup } from "../culture-words.ts";
import { endpoint } from "../endpoint.ts";
import { wordColumn } from "../laboratory-words.ts";
import { id, instant, lineText } from "../wire.ts";

const permission = "judge-cases";
const wording = lineText(200).describe("As the laboratory wrote it; case, blanks and hyphens make no difference");
const past = z
  .strictObject({ determined: z.number(), specimens: z.number() })
  .nullable()
  .describe("How many of the specimens with the wording are determined again; null when none are left");
const choice = z
  .string()
  .max(200)
  .nullable()
  .describe(
    "Of an organism: a group, or the name of a listed organism. Of a count: at-least-100000, below-100000 or unreadable. Null: withdrawn",
  );

/** Every wording of the laboratory that is not read by itself, with what the facility chose for it. */
export const listLaboratoryWords = endpoint({
  method: "GET",
  path: "/laboratory-words",
  summary: "List the wordings of the laboratory that wait for a choice or have one",
  permission,
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      words: z
        .array(
          z
            .strictObject({
              column: wordColumn,
              wording: z.string().describe("In the form in which wordings are compared"),
              specimens: z.number().describe("Specimens that have it"),
              choice,
              number: z.number().describe("The version of the choice; 0 where there is none"),
              isForPast: z.boolean().describe("Specimens recorded before the choice follow it too"),
              past,
              recordedAt: instant.nullable(),
              recordedBy: id.nullable(),
              proposal: z
                .string()
                .nullable()
                .describe("The one listed name that differs by one letter. It decides nothing"),
            })
            .meta({ id: "LaboratoryWord" }),
        )
        .describe("By column and wording"),
    })
    .meta({ id: "LaboratoryWords" }),
  errors: [],
});

/** One choice or a table of them: all are stored, or none. */
export const chooseLaboratoryWords = endpoint({
  method: "POST",
  path: "/laboratory-words",
  summary: "Choose what wordings of the laboratory mean, for specimens recorded from now on",
  effect: "creates",
  permission,
  wards: "none",
  reply: "json",
  body: {
    words: z
      .array(
        z.strictObject({
          column: wordColumn,
          wording,
          choice,
          replaces: z
            .int()
            .min(0)
            .optional()
            .describe(
              "The version that the person saw. Left out: a choice that differs from the stored one is refused",
            ),
        }),
      )
      .min(1, "choose for at least one wording")
      .max(2000),
  },
  output: z.strictObject({ stored: z.number().describe("Choices that are new") }).meta({ id: "WordsChosen" }),
  errors: ["word-repeated", "word-chosen-twice", "word-read-already", "word-choice-unknown"],
});

/** The choice for one wording, for specimens of the past too: some patients a call, until `past` is null. */
export const applyLaboratoryWord = endpoint({
  method: "POST",
  path: "/laboratory-words/past",
  summary: "Apply the choice for a wording to past specimens and determine the next patients again",
  effect: "creates",
  permission,
  wards: "none",
  reply: "json",
  body: {
    column: wordColumn,
    wording,
  },
  output: z
    .strictObject({
      past,
      patients: z.number().describe("Patients determined again by this call"),
      changed: z.number().describe("Determinations that came out otherwise"),
    })
    .meta({ id: "WordApplied" }),
  errors: ["not-found"],
});

/** What one wording is read as, for forms. */
export const readOrganismName = endpoint({
  method: "GET",
  path: "/organisms/reading",
  summary: "Read what an organism's name is taken for",
  permission: "record-care",
  wards: "facility",
  reply: "json",
  query: { name: lineText(200).describe("As the laboratory wrote it") },
  output: z
    .strictObject({
      group: organismGroup.nullable().describe("Null: the name waits for a person to choose its group"),
      name: z.string().nullable().describe("The name of the list, or of the group"),
      isOnList: z.boolean(),
      proposal: z.string().nullable().describe("The one listed name that differs by one letter. It decides nothing"),
    })
    .meta({ id: "OrganismReading" }),
  errors: [],
});

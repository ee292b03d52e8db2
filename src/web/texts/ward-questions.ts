import { catalogue } from "./catalogue.ts";

export const wardQuestionText = catalogue("wardQuestions", {
  title: "Unknown unit codes",
  lead: "These codes are similar to a unit's code or name. Choose what each one means. Later files from this source use your answer.",
  question: "Unit {{code}}",
  same: "The same as {{ward}}",
  newUnit: "A new unit",
});

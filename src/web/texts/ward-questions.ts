import { catalogue } from "./catalogue.ts";

export const wardQuestionText = catalogue("wardQuestions", {
  title: "Units that are not known",
  lead: "These codes are similar to the code or name of a unit. Your answer is kept for later files of this source.",
  question: "Unit {{code}}",
  same: "The same as {{ward}}",
  newUnit: "A new unit",
});

import { catalogue } from "./catalogue.ts";

/** What all fields and forms say. */
export const fieldText = catalogue("fields", {
  now: "Now",
  yes: "Yes",
  no: "No",
  notRecorded: "Not recorded",
  optional: "(may stay empty)",
  problemTitle_one: "Not recorded: one thing has to be mended",
  problemTitle_other: "Not recorded: {{count}} things have to be mended",
  lostTitle: "Not recorded: the server does not answer",
  lostDetail:
    "What you wrote is kept on this device. Send it again when the connection is back: it is recorded once, however often you send it.",
  sendAgain: "Send it again",
  sending: "Recording…",
  isRight: "I checked it: this value is right",
  staleTitle: "Somebody changed this entry since you opened it",
  staleDetail: "Nothing was recorded yet. Compare both, then choose.",
  mine: "What you are about to record",
  theirs: "What is there now",
  useMine: "Record mine all the same",
  useTheirs: "Keep what is there",
  draftTitle: "Your draft from before is here",
  draftDetail: "It was kept on this device and is not recorded yet.",
  draftDrop: "Start over",
  noDay: "Give both days, as YYYY-MM-DD.",
});

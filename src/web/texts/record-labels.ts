import {
  inserters,
  insertionPlaces,
  itemStates,
  removalReasons,
  securements,
  urineAppearances,
} from "../../../shared/catheter-words.ts";
import { recordFields } from "../../../shared/records.ts";
import { catalogue } from "./catalogue.ts";

/** Labels of the fields of a record, and the words of its closed lists, as the contract has them. */
export const fieldLabel = catalogue("recordFields", recordFields);
export const securementText = catalogue("securements", securements);
export const appearanceText = catalogue("urineAppearances", urineAppearances);
export const inserterText = catalogue("inserters", inserters);
export const placeText = catalogue("insertionPlaces", insertionPlaces);
export const removalReasonText = catalogue("removalReasons", removalReasons);
export const itemStateText = catalogue("itemStates", itemStates);

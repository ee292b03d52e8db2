import type { SignedChanges } from "./signed-changes.ts";

/**
 * Every error that a person or a program can get: its code, HTTP status, title and remedy.
 * A code that was once released is never used again for something else.
 * Form: RFC 9457, Problem Details for HTTP APIs.
 */
export const problems = {
  "zone-unknown": {
    status: 422,
    title: "This time zone is not known here",
    remedy: "Give an IANA time zone name such as America/New_York.",
  },
  "day-unreadable": { status: 422, title: "This is not a calendar day", remedy: "Write the day as YYYY-MM-DD." },
  "time-unreadable": {
    status: 422,
    title: "This is not a time",
    remedy: "Write the time as YYYY-MM-DDTHH:MM, with seconds or an offset if you have them.",
  },
  "time-does-not-exist": {
    status: 422,
    title: "This local time did not exist",
    remedy: "The clocks were put forward. Give the time just before or just after the change.",
  },
  "not-found": {
    status: 404,
    title: "This does not exist here",
    remedy: "Check the number, or ask whether the record belongs to another unit or facility.",
  },
  "entry-voided": {
    status: 409,
    title: "This entry is marked as entered in error",
    remedy: "Record it again if it was marked by mistake.",
  },
  "stale-version": {
    status: 412,
    title: "Another person changed this entry since you read it",
    remedy: "Read the entry again and repeat your change if it is still needed.",
  },
  "stay-overlaps": {
    status: 409,
    title: "The patient has two stays at once",
    remedy: "Discharge or correct the other stay first, or mark it as entered in error.",
  },
  "stay-number-taken": {
    status: 409,
    title: "This stay number is in use",
    remedy: "Give the stay its own number, or correct the stay that has it.",
  },
  "move-overlaps": {
    status: 409,
    title: "The patient is on two units at once",
    remedy: "Correct the end or the beginning of one of the two unit stays.",
  },
  "outside-stay": {
    status: 409,
    title: "This is outside the stay",
    remedy: "Correct the time, or the admission and discharge of the stay.",
  },
  "end-before-start": {
    status: 422,
    title: "The end is before the beginning",
    remedy: "Correct one of the two times.",
  },
  "not-on-a-ward": {
    status: 409,
    title: "The patient was not on a unit then",
    remedy: "Correct the time, or record the move to the unit first.",
  },
  "already-discharged": {
    status: 409,
    title: "The patient was discharged already",
    remedy: "Cancel or correct the recorded discharge.",
  },
  "not-discharged": { status: 409, title: "The stay has not ended", remedy: "There is no discharge to cancel." },
  "first-ward-stay": {
    status: 409,
    title: "The stay needs this unit stay",
    remedy: "Correct it, or mark the whole stay as entered in error.",
  },
  "insertion-unknown": {
    status: 422,
    title: "The time of insertion is missing",
    remedy: "Give the time of insertion, or say that the catheter was in place on arrival.",
  },
  "arrival-contradicts": {
    status: 422,
    title: "In place on arrival and inserted later cannot both be true",
    remedy: "Correct the time of insertion, or do not say that the catheter was in place on arrival.",
  },
  "removal-before-insertion": {
    status: 422,
    title: "The removal is before the insertion",
    remedy: "Correct one of the two times.",
  },
  "removal-unclear": {
    status: 422,
    title: "It is not clear when the catheter was removed",
    remedy: "Give the time of the removal, or both the last time seen in place and the first noted absent.",
  },
  "seen-after-removal": {
    status: 409,
    title: "The catheter was confirmed in place after its removal",
    remedy: "Correct the removal, or the time at which it was confirmed.",
  },
  "seen-before-insertion": {
    status: 409,
    title: "The catheter was confirmed in place before its insertion",
    remedy: "Correct the insertion, or the time at which it was confirmed.",
  },
  "already-removed": {
    status: 409,
    title: "The removal is recorded already",
    remedy: "Correct the recorded removal if it is wrong.",
  },
  "in-the-future": { status: 422, title: "This is in the future", remedy: "Give the time at which it happened." },
  "database-newer": {
    status: 500,
    title: "The database was written by a newer version",
    remedy: "Start that version of Dwell Ledger, or restore a backup made by this one.",
  },
  "database-edited": {
    status: 500,
    title: "The database does not have the tables that this version made",
    remedy: "Restore a backup: a migration was changed or interrupted.",
  },
  "database-unreachable": {
    status: 503,
    title: "The database cannot be reached",
    remedy: "Check DWELL_DATABASE_URL and that the database server runs.",
  },
  "service-busy": {
    status: 503,
    title: "Too many large reports are being worked out",
    remedy: "Try again in a minute. Recording goes on meanwhile.",
  },
  "database-not-writable": {
    status: 500,
    title: "The database cannot be written",
    remedy:
      "Give the user that runs Dwell Ledger write access to the folder, or name another one in DWELL_DATABASE_URL.",
  },
  "database-unreadable": {
    status: 500,
    title: "The database cannot be read",
    remedy: "Check that DWELL_DATABASE_URL names the right file, or restore a backup. The file was left as it is.",
  },
  "import-interrupted": {
    status: 409,
    title: "The import was interrupted",
    remedy: "Import the folder again; what was stored of it is known and changes nothing.",
  },
  "import-not-waiting": {
    status: 409,
    title: "This import does not wait for a decision",
    remedy: "Check its state: it is still being read, or a decision is recorded.",
  },
  "import-lines-refused": {
    status: 409,
    title: "Lines of these files were refused",
    remedy: "Fix the files and send them again, or hold the rejected lines for repair and store the others.",
  },
  "import-file-broken": {
    status: 409,
    title: "One of these files cannot be read to its end",
    remedy: "Fix the named file and send all files again: such a file cannot be stored in part.",
  },
  "import-too-large": {
    status: 422,
    title: "These are too many lines for one request",
    remedy: "Send the files in parts, or import them on the server with npm run import.",
  },
  "files-unknown": {
    status: 422,
    title: "None of these files is known",
    remedy: "Give each file the name that the layout gives it, such as moves.csv.",
  },
  "line-not-set-aside": {
    status: 409,
    title: "This line does not wait for repair",
    remedy: "Read the rejected lines again: this one is resolved, or its import was not stored.",
  },
  "demo-record": {
    status: 409,
    title: "This record is the demo hospital",
    remedy:
      "Name another database in DWELL_DATABASE_URL, or move the demo's file away, and begin with npm start -- --empty.",
  },
  "database-in-use": {
    status: 409,
    title: "Another Dwell Ledger is using this database",
    remedy: "Stop the other one first. A SQLite file has one owner at a time.",
  },
  "disk-full": {
    status: 507,
    title: "The disk is full",
    remedy: "Make room on the disk; nothing of what failed was stored.",
  },
  "field-missing": { status: 422, title: "Something is missing", remedy: "Fill in the field that is named." },
  "same-patient": { status: 422, title: "Both records are the same", remedy: "Name two different records." },
  "already-merged": {
    status: 409,
    title: "This record was merged already",
    remedy: "Use the record that it was merged into.",
  },
  "outside-surveillance-days": {
    status: 409,
    title: "No infection of a stay can rest on this day",
    remedy:
      "Correct the time, or record the stay: 2 days before the first inpatient day to 4 days after discharge count.",
  },
  "result-contradicts": {
    status: 422,
    title: "The laboratory's result contradicts itself",
    remedy: "Say that the report is preliminary or final, or leave the organisms out until there are any.",
  },
  "too-many-organisms": {
    status: 422,
    title: "These are too many organisms",
    remedy: "List each organism of the report once; record what is only flora as one organism of that name.",
  },
  "word-repeated": {
    status: 422,
    title: "The table has this wording twice",
    remedy: "Leave one row for each wording. Case, blanks and hyphens make no difference.",
  },
  "word-chosen-twice": {
    status: 409,
    title: "Another choice for this wording exists",
    remedy: "Look at the choice under Settings > Laboratory words, and change it there.",
  },
  "word-read-already": {
    status: 409,
    title: "This wording is already read",
    remedy: "Leave the row out. Where the reading is wrong, correct the specimen and report the wording.",
  },
  "word-choice-unknown": {
    status: 422,
    title: "This choice is not known",
    remedy: "Use a group, the name of a listed organism, or at-least-100000, below-100000 or unreadable for a count.",
  },
  "organism-missing": {
    status: 422,
    title: "The report does not say what grew",
    remedy:
      "Enter what the laboratory reported, or No growth. For files that leave it empty, change the source under Settings > Import sources.",
  },
  "organism-group-contradicts": {
    status: 422,
    title: "This organism belongs to another group",
    remedy: "Leave the group out: it is chosen only for names that are not on the list of organisms.",
  },
  "sign-contradicts": {
    status: 422,
    title: "The sign contradicts itself",
    remedy: "Give a temperature for the sign temperature alone, and another cause for a sign that was present.",
  },
  "finding-contradicts": {
    status: 422,
    title: "The finding contradicts itself",
    remedy: "Give a number of cells for white blood cells in urine alone, and one that fits whether they were found.",
  },
  "nothing-to-decide": {
    status: 409,
    title: "There is nothing to decide about this culture",
    remedy: "Wait for the laboratory's report; cultures without growth and unusable ones are closed automatically.",
  },
  "not-decided": {
    status: 409,
    title: "No decision about this culture is recorded",
    remedy: "There is no decision to take back.",
  },
  "ward-not-watched": {
    status: 409,
    title: "The unit is not under surveillance in this month",
    remedy: "Put it under surveillance for this month first, or choose another unit or month.",
  },
  "month-not-over": {
    status: 409,
    title: "The month is not over",
    remedy: "Wait until its last day has passed.",
  },
  "event-found": {
    status: 409,
    title: "The unit has an event in this month",
    remedy: "Look at the event; when it is wrong, correct what is recorded of the patient.",
  },
  "none-found-already": {
    status: 409,
    title: "“No infection identified” is already confirmed",
    remedy: "There is nothing more to do.",
  },
  "period-too-long": {
    status: 422,
    title: "These are too many days at once",
    remedy: "Ask for at most 366 days.",
  },
  "zone-fixed": {
    status: 409,
    title: "The time zone can no longer change",
    remedy: "Set up a new facility if this one was set up with the wrong zone.",
  },
  "census-change-too-early": {
    status: 409,
    title: "The census time cannot change from that day on",
    remedy: "Let it change on the first day of a month that has not begun.",
  },
  "census-time-unreadable": {
    status: 422,
    title: "This is not a census time",
    remedy: "Write the time as HH:MM, from 00:00 to 24:00.",
  },
  "count-impossible": {
    status: 422,
    title: "These counts cannot be true",
    remedy: "Count again: patients with a catheter are among the patients.",
  },
  "ward-unclear": {
    status: 409,
    title: "It is not clear which unit this code means",
    remedy: "For each code, choose a similar unit or a new unit.",
  },
  "alias-of-itself": {
    status: 422,
    title: "A code cannot be an alias of itself",
    remedy: "Choose another unit, or a new unit.",
  },
  "alias-taken": {
    status: 409,
    title: "This code already has an answer",
    remedy: "Give one answer for each code. An alias can be removed under Settings > Import sources.",
  },
  "alias-code-is-ward": {
    status: 409,
    title: "This code belongs to a unit",
    remedy: "Merge the two units under Settings > Units if they are the same.",
  },
  "alias-ward-unknown": {
    status: 422,
    title: "No unit has this code",
    remedy: "Enter the code of a recorded unit, or of a unit in wards.csv.",
  },
  "same-ward": {
    status: 422,
    title: "A unit cannot be merged into itself",
    remedy: "Choose another unit.",
  },
  "ward-gone": {
    status: 409,
    title: "This unit was merged or entered in error",
    remedy: "Choose the unit that it was merged into, or another one.",
  },
  "ward-counts-overlap": {
    status: 409,
    title: "The units have different manual counts for the same day",
    remedy: "Decide which count is right, record it for both units, and merge them again.",
  },
  "ward-has-policy": {
    status: 409,
    title: "The unit has a policy of its own",
    remedy: "Set its policy back to the facility's under Settings > Policy, then merge it.",
  },
  "ward-has-entries": {
    status: 409,
    title: "The unit has entries",
    remedy: "Merge the unit into the right one instead, or correct the entries first.",
  },
  "source-name-taken": {
    status: 409,
    title: "This name of an import source is in use",
    remedy: "Give the source its own name, or change the one that has it.",
  },
  "source-unknown": {
    status: 422,
    title: "This import source is not known",
    remedy: "Check the spelling, or add the source under Settings > Import sources, or with --new-source.",
  },
  "ward-code-taken": {
    status: 409,
    title: "This code is in use",
    remedy: "Give the unit its own code, or describe the unit that has it.",
  },
  "ward-in-use": {
    status: 409,
    title: "Patients were on the unit after this day",
    remedy: "Give a later day, or record their moves and discharges first.",
  },
  "ward-closed": {
    status: 409,
    title: "The unit was closed by then",
    remedy: "Choose a unit that was open, give a time up to the unit's last day, or have the unit opened again.",
  },
  "ward-unknown": {
    status: 422,
    title: "There is no such unit to compare",
    remedy: "Give the code of an inpatient unit of this facility.",
  },
  "ward-type-unknown": {
    status: 422,
    title: "No unit is of this type",
    remedy: "Choose one of the types that are listed, or leave the type out.",
  },
  "period-impossible": {
    status: 422,
    title: "This period cannot be compared",
    remedy: "Give a first month that is not after the last one, and at most 60 months.",
  },
  "unknown-reading": {
    status: 422,
    title: "The edition has no such reading",
    remedy: "Choose one of the open points of the edition, and one of its readings.",
  },
  "reading-not-to-come": {
    status: 422,
    title: "A reading can start only in a future month",
    remedy: "Choose next month or a later month.",
  },
  "reading-chosen-already": {
    status: 409,
    title: "This open point already has a reading that starts in that month",
    remedy: "Choose another month.",
  },
  "scope-overlaps": {
    status: 409,
    title: "The unit is already under surveillance in these months",
    remedy: "End the other surveillance or mark it as entered in error first, or choose months without surveillance.",
  },
  "folder-unreadable": {
    status: 422,
    title: "This folder cannot be read",
    remedy: "Name a folder that holds at least one of the known files and that this program may read.",
  },
  "csv-file-unreadable": {
    status: 422,
    title: "This file cannot be read",
    remedy: "Check that it is a file, that it is whole, and that this program may read it.",
  },
  "csv-file-repeated": {
    status: 422,
    title: "This file is there twice",
    remedy: "Keep one of the two; upper and lower case in names make no difference.",
  },
  "csv-not-text": {
    status: 422,
    title: "This is not a text file",
    remedy: 'Open it in the program that made it and save it as "CSV UTF-8".',
  },
  "csv-empty": {
    status: 422,
    title: "This file is empty",
    remedy: "Give the file a header line with the names of its columns, or leave the file out.",
  },
  "csv-header-missing": {
    status: 422,
    title: "The header line is missing",
    remedy: "Write the names of the columns into the first line.",
  },
  "csv-column-missing": {
    status: 422,
    title: "A column is missing",
    remedy: "Add the column to the header line and its values to every line.",
  },
  "csv-column-repeated": {
    status: 422,
    title: "A column is there twice",
    remedy: "Keep the column that is right and take the other one out.",
  },
  "csv-column-unknown": {
    status: 422,
    title: "A column is not known",
    remedy: "Correct the name of the column, or take the column out.",
  },
  "csv-cell-count": {
    status: 422,
    title: "The line has too many or too few cells",
    remedy: "Give the line one cell for each column, and put a cell that holds the delimiter into double quotes.",
  },
  "csv-quote": {
    status: 422,
    title: "A double quote is in the wrong place",
    remedy: "Put the whole cell into double quotes and write every double quote inside it twice.",
  },
  "csv-quote-open": {
    status: 422,
    title: "A double quote is not closed",
    remedy: "Close the double quote, or take it out.",
  },
  "csv-line-too-long": {
    status: 422,
    title: "The line is too long",
    remedy: "Check that the lines of the file end in line breaks and that this is the right file.",
  },
  "csv-not-utf8": {
    status: 422,
    title: "A character cannot be read",
    remedy: 'Save the file as "CSV UTF-8" and check the characters that are not plain English letters.',
  },
  "csv-cell-empty": { status: 422, title: "A value is missing", remedy: "Fill in the cell." },
  "csv-cell-too-long": { status: 422, title: "The text is too long", remedy: "Shorten it to 200 characters." },
  "csv-character": {
    status: 422,
    title: "The text holds a character that is not allowed here",
    remedy: "Type the text again without line breaks and invisible characters.",
  },
  "csv-identifier-damaged": {
    status: 422,
    title: "A spreadsheet has changed this identifier",
    remedy:
      "Format the column as text in the spreadsheet, take the identifiers from the source again and save the file.",
  },
  "csv-date-ambiguous": {
    status: 422,
    title: "This date can be read in two ways",
    remedy: "Write the year first: days as YYYY-MM-DD, times as YYYY-MM-DDTHH:MM.",
  },
  "csv-date-serial": {
    status: 422,
    title: "This is the number that a spreadsheet keeps for a date",
    remedy:
      "Give the column the format yyyy-mm-dd (for times yyyy-mm-ddThh:mm) in the spreadsheet and save the file again.",
  },
  "csv-number": {
    status: 422,
    title: "This is not a number that can be used here",
    remedy: "Write a whole number in digits, without separators, decimals or a unit.",
  },
  "csv-temperature": {
    status: 422,
    title: "This is not a temperature",
    remedy: "Write it as it was measured, such as 38.4 (°C) or 101.1 F.",
  },
  "csv-time-of-day": {
    status: 422,
    title: "This is not a time of day",
    remedy: "Write it as HH:MM, from 00:00 to 23:59, or leave it empty.",
  },
  "csv-word": {
    status: 422,
    title: "This word is not in the list",
    remedy: "Use one of the words of the list, or leave the cell empty where that is allowed.",
  },
  "stay-unknown": {
    status: 404,
    title: "No stay has this number",
    remedy: "Give the stay in stays.csv or its moves in moves.csv, or correct the number.",
  },
  "catheter-unknown": {
    status: 404,
    title: "No catheter is found for this line",
    remedy: "Give the catheter in catheters.csv, or correct its number, the stay or the day.",
  },
  "catheter-unclear": {
    status: 409,
    title: "It is not clear which catheter is meant",
    remedy: "Name the stay and the number of the catheter, or the time of day.",
  },
  "specimen-unclear": {
    status: 409,
    title: "It is not clear which specimen is meant",
    remedy: "Give the laboratory's number of the specimen, or mark the wrong one as entered in error.",
  },
  "specimen-refused": {
    status: 409,
    title: "Another line of this specimen was refused",
    remedy: "Fix the named line: a specimen is stored with all of its lines.",
  },
  "written-too-early": {
    status: 422,
    title: "It was entered before it happened",
    remedy: "Correct the time at which it happened, or the time of entry.",
  },
  "line-contradicts": {
    status: 409,
    title: "Two lines contradict each other",
    remedy: "Keep the line that is right and take the other one out.",
  },
  "stay-refused": {
    status: 409,
    title: "The stay of this line was refused",
    remedy: "Fix the named line: this one is then read again.",
  },
  "stay-of-another-patient": {
    status: 409,
    title: "The stay belongs to another patient",
    remedy: "Correct the patient or the number of the stay in one of the two lines.",
  },
  "not-signed-in": {
    status: 401,
    title: "It is not known who is asking",
    remedy: "Open the page on the machine on which Dwell Ledger runs, at http://127.0.0.1 with its port.",
  },
  "not-permitted": {
    status: 403,
    title: "Your role does not allow this",
    remedy: "Ask an administrator whether your role should be another one.",
  },
  "method-not-allowed": {
    status: 405,
    title: "This cannot be done at this address",
    remedy: "Use one of the methods that the Allow header names.",
  },
  "address-unknown": {
    status: 404,
    title: "There is nothing at this address",
    remedy: "Correct the address; the page at /docs lists the ones that programs can call.",
  },
  "request-unreadable": {
    status: 400,
    title: "The request cannot be read",
    remedy: "Check the address and that the body is whole, valid JSON.",
  },
  "request-too-large": {
    status: 413,
    title: "The request is too large",
    remedy: "Send less at a time.",
  },
  "media-type-unknown": {
    status: 415,
    title: "The body is not in a form that can be read here",
    remedy: "Send JSON, with the header content-type: application/json.",
  },
  "field-unknown": {
    status: 422,
    title: "A field is not known",
    remedy: "Correct the name of the field, or leave the field out.",
  },
  "field-unreadable": {
    status: 422,
    title: "A value cannot be used",
    remedy: "Give the field a value of the form that is described.",
  },
  "port-in-use": {
    status: 500,
    title: "The port is in use",
    remedy: "Stop the program that uses it, or name another port in DWELL_PORT.",
  },
  "setting-unusable": {
    status: 500,
    title: "A setting cannot be used",
    remedy: "Correct what is named in the environment in which Dwell Ledger is started.",
  },
  "not-in-place": {
    status: 409,
    title: "The catheter was not in place then",
    remedy: "Correct the time, or the insertion or removal of the catheter.",
  },
  "indication-missing": {
    status: 422,
    title: "The reason is missing",
    remedy: "Say why the catheter is still needed, or choose another outcome.",
  },
  "item-unknown": {
    status: 422,
    title: "This item is not in the bundle",
    remedy: "Use the items that the unit's policy lists for a maintenance bundle check.",
  },
  "record-incomplete": {
    status: 422,
    title: "The policy asks for this to be recorded",
    remedy: "Record it. If it is not known, record a catheter found in place on arrival instead.",
  },
  "field-of-another-note": {
    status: 422,
    title: "This kind of note has no such field",
    remedy: "Leave the field out, or mark the note as entered in error and write one of the other kind.",
  },
  "out-of-bounds": {
    status: 422,
    title: "This value cannot be right",
    remedy: "Correct the value; the bounds are named.",
  },
  "unusual-value": {
    status: 422,
    title: "This value is unusual",
    remedy: "Check the value. When it is right, send it again and name its field under confirm.",
  },
  "idempotency-key-reused": {
    status: 422,
    title: "This key was used for something else",
    remedy: "Give every new creation a key of its own; send a key again only with the same content.",
  },
  "indication-unknown": {
    status: 422,
    title: "This reason is not known",
    remedy: "Choose one of the list; the policy of the unit can add reasons of its own.",
  },
  "policy-in-the-past": {
    status: 409,
    title: "A policy cannot change what was in force",
    remedy: "Let the new version begin today or later.",
  },
  "policy-contradicts": {
    status: 422,
    title: "The policy contradicts itself",
    remedy: "List each item once, and give thresholds only for indications that are accepted.",
  },
  "json-name-repeated": {
    status: 400,
    title: "A name is in the request twice",
    remedy: "Send every field once.",
  },
  "json-too-deep": {
    status: 400,
    title: "The request is nested too deeply",
    remedy: "Send the fields as they are described; none of them nests like that.",
  },
  "json-value-unusable": {
    status: 400,
    title: "A value in the request cannot be kept as it is",
    remedy: "Check the text or number at that place.",
  },
  "cursor-unreadable": {
    status: 422,
    title: "The place to go on from cannot be read",
    remedy: "Send the cursor that the page before gave, or leave it out to begin again.",
  },
  "idempotency-key-missing": {
    status: 400,
    title: "The creation has no key",
    remedy: "Send the header Idempotency-Key with a new key, and the same key again when you repeat the request.",
  },
  "idempotency-key-unreadable": {
    status: 400,
    title: "The key of the creation cannot be read",
    remedy: "Use 1 to 200 letters, digits and signs without spaces.",
  },
  "version-missing": {
    status: 428,
    title: "It is not said which version is changed",
    remedy: "Read the entry, and send its version in quotes as the header If-Match.",
  },
  "version-unreadable": {
    status: 400,
    title: "The version that is changed cannot be read",
    remedy: 'Send the version of the entry in quotes as the header If-Match, such as "3".',
  },
  "figure-impossible": {
    status: 422,
    title: "This figure cannot be",
    remedy:
      "Give a number that is not below zero, whole where things are counted, and above zero where something is divided by it.",
  },
  "baseline-unusable": {
    status: 422,
    title: "This baseline cannot be used",
    remedy: "Complete the baseline from its publication; each term, category and type of unit is in it once.",
  },
  "baseline-of-another-kind": {
    status: 422,
    title: "This baseline predicts something else",
    remedy: "Choose a baseline of infections for the SIR, and one with utilization for the SUR.",
  },
  "month-not-ready": {
    status: 409,
    title: "The month cannot be signed yet",
    remedy: "Resolve each listed item by its remedy, and sign again.",
  },
  "month-changed": {
    status: 409,
    title: "The figures are no longer those that you saw",
    remedy: "Read the month again, look at what changed, and sign what you see then.",
  },
  "amendment-reason-missing": {
    status: 422,
    title: "An amendment needs a reason",
    remedy: "Say why the month is signed again; the first signature has no reason.",
  },
  "nothing-to-amend": {
    status: 409,
    title: "Nothing has changed since the month was signed",
    remedy: "Leave the signature as it is.",
  },
  "changes-signed-month": {
    status: 409,
    title: "This changes a signed month",
    remedy: "Compare the figures before and after. Record the change if it is right.",
  },
  "level-impossible": {
    status: 422,
    title: "No interval has this level",
    remedy: "Give the level as a fraction, such as 0.95.",
  },
  "internal-error": {
    status: 500,
    title: "Something went wrong in Dwell Ledger",
    remedy: "Try again. If it happens again, report it with the number of the request.",
  },
} as const satisfies Record<string, { status: number; title: string; remedy: string }>;

export type ProblemCode = keyof typeof problems;

/** One thing that is wrong: where, what, and how to fix it. Never holds what a patient could be known by. */
export interface Fault {
  code: ProblemCode;
  /** JSON pointer of the field at fault, such as `/removedAt`; empty when the whole request is meant. */
  pointer: string;
  /** One sentence that names the value's problem. */
  detail: string;
  /** The other record that is in the way, such as `catheter 12`. */
  other?: string;
}

/**
 * An expected failure. Everything else that is thrown is a bug and answers as 500.
 * Carries all faults found at once.
 */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly faults: readonly Fault[];
  /** The state by now, for a change that came too late. */
  current?: object;
  /** What it would change of signed months. */
  signed?: SignedChanges;

  constructor(first: Fault, ...more: Fault[]) {
    super(first.detail);
    this.name = "Problem";
    this.code = first.code;
    this.faults = [first, ...more];
  }
}

/** Throws a {@link Problem} with a single fault. */
export function refuse(code: ProblemCode, detail: string, at: { pointer?: string; other?: string } = {}): never {
  throw new Problem({
    code,
    pointer: at.pointer ?? "",
    detail,
    ...(at.other === undefined ? {} : { other: at.other }),
  });
}

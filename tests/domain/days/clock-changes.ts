/** A change of the clocks: its UTC instant, the local time one second before it, and the local time at it. */
export interface ClockChange {
  readonly zone: string;
  readonly at: string;
  readonly before: string;
  readonly after: string;
  /** What makes it hard. */
  readonly kind: string;
}

function change(zone: string, at: string, before: string, after: string, kind: string): ClockChange {
  return { zone, at, before, after, kind };
}

/** Source: IANA tz database 2025b, each line as `zdump -v` prints it. */
export const clockChanges: readonly ClockChange[] = [
  change("America/New_York", "2026-03-08T07:00:00Z", "2026-03-08T01:59:59", "2026-03-08T03:00:00", "forward an hour"),
  change("America/New_York", "2026-11-01T06:00:00Z", "2026-11-01T01:59:59", "2026-11-01T01:00:00", "back an hour"),
  change("America/Sao_Paulo", "2018-11-04T03:00:00Z", "2018-11-03T23:59:59", "2018-11-04T01:00:00", "no midnight"),
  change("America/Sao_Paulo", "2018-02-18T02:00:00Z", "2018-02-17T23:59:59", "2018-02-17T23:00:00", "late hour twice"),
  change("Australia/Lord_Howe", "2024-10-05T15:30:00Z", "2024-10-06T01:59:59", "2024-10-06T02:30:00", "30 min forward"),
  change("Australia/Lord_Howe", "2024-04-06T15:00:00Z", "2024-04-07T01:59:59", "2024-04-07T01:30:00", "30 min back"),
  change("Pacific/Apia", "2011-12-30T10:00:00Z", "2011-12-29T23:59:59", "2011-12-31T00:00:00", "skipped date"),
  change(
    "Pacific/Kiritimati",
    "1994-12-31T10:00:00Z",
    "1994-12-30T23:59:59",
    "1995-01-01T00:00:00",
    "skipped year end",
  ),
  change(
    "Pacific/Kwajalein",
    "1969-09-30T13:00:00Z",
    "1969-09-30T23:59:59",
    "1969-09-30T01:00:00",
    "date nearly twice",
  ),
  change("America/Nuuk", "2024-03-31T01:00:00Z", "2024-03-30T22:59:59", "2024-03-31T00:00:00", "late-evening gap"),
  change("America/Nuuk", "2024-10-27T01:00:00Z", "2024-10-26T23:59:59", "2024-10-26T23:00:00", "late hour twice"),
  change(
    "Europe/Dublin",
    "2024-03-31T01:00:00Z",
    "2024-03-31T00:59:59",
    "2024-03-31T02:00:00",
    "reversed, end of winter",
  ),
  change("Europe/Dublin", "2024-10-27T01:00:00Z", "2024-10-27T01:59:59", "2024-10-27T01:00:00", "reversed, to winter"),
  change("Antarctica/Troll", "2024-03-31T01:00:00Z", "2024-03-31T00:59:59", "2024-03-31T03:00:00", "two hours forward"),
  change("Antarctica/Troll", "2024-10-27T01:00:00Z", "2024-10-27T02:59:59", "2024-10-27T01:00:00", "two hours back"),
  change("Africa/Casablanca", "2024-03-10T02:00:00Z", "2024-03-10T02:59:59", "2024-03-10T02:00:00", "back for Ramadan"),
  change("Africa/Casablanca", "2024-04-14T02:00:00Z", "2024-04-14T01:59:59", "2024-04-14T03:00:00", "after Ramadan"),
  change("America/Havana", "2024-11-03T05:00:00Z", "2024-11-03T00:59:59", "2024-11-03T00:00:00", "midnight twice"),
  change("America/Havana", "2024-03-10T05:00:00Z", "2024-03-09T23:59:59", "2024-03-10T01:00:00", "no midnight"),
  change(
    "America/St_Johns",
    "2010-11-07T02:31:00Z",
    "2010-11-07T00:00:59",
    "2010-11-06T23:01:00",
    "back over midnight",
  ),
  change("America/Toronto", "1919-03-31T04:30:00Z", "1919-03-30T23:29:59", "1919-03-31T00:30:00", "gap over midnight"),
  change("Asia/Kathmandu", "1985-12-31T18:30:00Z", "1985-12-31T23:59:59", "1986-01-01T00:15:00", "15 min at year end"),
  change("Asia/Pyongyang", "2018-05-04T15:00:00Z", "2018-05-04T23:29:59", "2018-05-05T00:00:00", "gap before midnight"),
  change(
    "Africa/Monrovia",
    "1972-01-07T00:44:30Z",
    "1972-01-06T23:59:59",
    "1972-01-07T00:44:30",
    "offset with seconds",
  ),
  change("America/Recife", "2000-10-08T03:00:00Z", "2000-10-07T23:59:59", "2000-10-08T01:00:00", "a week only"),
  change("America/Recife", "2000-10-15T02:00:00Z", "2000-10-14T23:59:59", "2000-10-14T23:00:00", "end of the week"),
  change("Africa/Tunis", "1943-04-17T00:00:00Z", "1943-04-17T01:59:59", "1943-04-17T01:00:00", "eight days only"),
  change("Europe/Vienna", "1945-04-12T01:00:00Z", "1945-04-12T02:59:59", "1945-04-12T02:00:00", "after ten days"),
];

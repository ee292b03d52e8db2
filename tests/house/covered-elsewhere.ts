/**
 * Files of src without a test file of their own, each with the test that covers it instead.
 * A file that has its own test, or no function to test, must not stand here.
 */
export const coveredElsewhere: Readonly<Record<string, string>> = {
  "src/http/headers.ts": "tests/http/app.test.ts",
  "src/http/health.ts": "tests/http/app.test.ts",
  "src/http/openapi-route.ts": "tests/http/openapi.test.ts",
  "src/http/page-files.ts": "tests/http/app.test.ts",
  "src/http/read-input.ts": "tests/http/mount.test.ts",
  "src/usecases/check-health.ts": "tests/http/app.test.ts",
  "src/usecases/find-person.ts": "tests/http/principal.test.ts",
  "src/usecases/find-ward.ts": "tests/http/refusals.test.ts",
  "src/usecases/list-wards.ts": "tests/http/endpoints.test.ts",
  "src/usecases/read-facility.ts": "tests/http/endpoints.test.ts",
  "src/usecases/read-me.ts": "tests/http/endpoints.test.ts",
  "src/usecases/report-month.ts": "tests/http/endpoints.test.ts",
  "src/usecases/report-ward-day.ts": "tests/http/endpoints.test.ts",
  "src/usecases/report-ward-days.ts": "tests/http/endpoints.test.ts",
  "src/web/pages/month-page.tsx": "tests/browser/month-page.test.ts",
  "src/web/pages/unknown-page.tsx": "tests/browser/page-states.test.ts",
  "src/web/parts/address.ts": "tests/browser/month-page.test.ts",
  "src/web/parts/figure.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/frame.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/month-picker.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/month-table.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/page-link.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/show-answer.tsx": "tests/browser/page-states.test.ts",
  "src/web/parts/use-answer.ts": "tests/browser/page-states.test.ts",
  "src/web/parts/ward-day-patients.tsx": "tests/browser/month-page.test.ts",
  "src/web/parts/ward-days.tsx": "tests/browser/month-page.test.ts",
};

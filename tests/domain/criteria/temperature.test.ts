import { describe, expect, it } from "vitest";
import { readTemperature, type Temperature, temperatureText } from "../../../src/domain/criteria/index.ts";
import { comparedTo, isHuman } from "../../../src/domain/criteria/temperature.ts";

const read = (text: string): Temperature => {
  const temperature = readTemperature(text);
  if (!temperature) throw new Error(`${text} cannot be read`);
  return temperature;
};

describe("temperatures", () => {
  // 38.0 °C is 100.4 °F and 36.0 °C is 96.8 °F exactly, by the definition of the Fahrenheit scale.
  it.each([
    ["38.0", 0],
    ["38,0 °C", 0],
    ["100.4 F", 0],
    ["38.01", 1],
    ["38.1 C", 1],
    ["100.41 F", 1],
    ["100.5F", 1],
    ["37.99", -1],
    ["100.39 °F", -1],
  ])("%s against 38.0 °C: %s", (text, side) => {
    expect(Math.sign(comparedTo(read(text), 3_800))).toBe(side);
  });

  it.each([
    ["96.8 F", 0],
    ["96.79 F", -1],
    ["35.99", -1],
    ["36.0", 0],
  ])("%s against 36.0 °C: %s", (text, side) => {
    expect(Math.sign(comparedTo(read(text), 3_600))).toBe(side);
  });

  it.each([
    ["38.4", 3_840, "C"],
    ["38", 3_800, "C"],
    ["+38,45 °c", 3_845, "C"],
    [" 101.1 ° f ", 10_110, "F"],
    ["-0.5", -50, "C"],
  ])("%j is %s hundredths of °%s", (text, hundredths, unit) => {
    expect(readTemperature(text)).toEqual({ hundredths, unit });
  });

  it.each(["", "38.456", "38-39", "warm", "at 38.4", "38.4 C.", "38.", "38.4°°C", "38.4CF", "38..4", "1000", "38.4 K"])(
    "%j is no temperature",
    (text) => {
      expect(readTemperature(text)).toBeNull();
    },
  );

  it.each([
    ["98.6", false],
    ["98.6 F", true],
    ["38.4", true],
    ["12.9", false],
    ["13.0", true],
    ["46.51", false],
    ["46.5", true],
    ["-38.4", false],
  ])("%s can be a living body's: %s", (text, human) => {
    expect(isHuman(read(text))).toBe(human);
  });

  it("is shown as it was measured", () => {
    expect(["38.4", "100.25 F", "38"].map((text) => temperatureText(read(text)))).toEqual([
      "38.4 °C",
      "100.25 °F",
      "38.0 °C",
    ]);
  });
});

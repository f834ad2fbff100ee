// Lengths as they are read on a tape, in centimetres and inches.

const minus = (text) => text.replace("-", "−");

/** To a tenth, a minus as wide as a digit; nothing has no sign. */
export function cm(value, places = 1) {
  const text = value.toFixed(places);
  return minus(Number(text) === 0 ? (0).toFixed(places) : text);
}

/** Inches to the nearest sixteenth: `31 1/2`. */
export function inches(value) {
  let over = Math.round((Math.abs(value) / 2.54) * 16);
  const sign = value < 0 && over > 0 ? "−" : "";
  const whole = Math.floor(over / 16);
  over %= 16;
  let under = 16;
  while (over && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const part = over ? `${over}/${under}` : "";
  return sign + (whole && part ? `${whole} ${part}` : part || String(whole));
}

export const signed = (text) => (/^[−0.]/.test(text) && (text.startsWith("−") || !/[1-9]/.test(text)) ? text : `+${text}`);

/** Both units at once, that of the file first. */
export function both(value, unit) {
  return unit === "inch" ? `${inches(value)} in, ${cm(value)} cm` : `${cm(value)} cm, ${inches(value)} in`;
}

/** A length in the unit of the file, without its name. */
export const plain = (value, unit) => (unit === "inch" ? inches(value) : cm(value));

/** The same in the other unit, with its name. */
export const other = (value, unit) => (unit === "inch" ? `${cm(value)} cm` : `${inches(value)} in`);

/** How the file takes a number of a draft, whatever its unit. */
export const written = (value) => `${Number(value.toFixed(4))} cm`;

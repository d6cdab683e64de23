/** What no message may say. */

/** A measure that no sheet can have: a kilometre or more in millimetres, one in powers of ten, or none at all. */
export function nonsenseIn(message: string): string | undefined {
  const [measure] =
    /(?:NaN|Infinity|\d(?:e[-+]\d+)|-?\d{7,}(?:\.\d+)?(?= ?(?:mm|cm|m|in)\b(?!²)))/.exec(unquoted(message)) ?? [];
  return measure;
}

/** What is quoted stands so in the text; what is no name may hold quotation marks itself. */
const unquoted = (message: string): string =>
  message.replace(
    /^.*(?= is not a valid XML name)|^\S+(?= is given twice)|The (?:attribute|value of) \S+|no element \S+|The number \S+|<\S+|"[^"]*"|[^\s=]+=\S+/g,
    '',
  );

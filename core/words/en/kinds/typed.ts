/** What is wrong with a figure that was typed; figures come as they are written in fields. */
export const typed = {
  missing: ({ label }: { label: string }) => `${label}: type a number.`,
  notANumber: ({ text, example }: { text: string; example: string }) =>
    `“${text}” is not a number. Type figures only, such as ${example}.`,
  twoMeanings: ({ text, one, other }: { text: string; one: string; other: string }) =>
    `“${text}” can mean ${one} or ${other}. Type it in one of these two ways.`,
  outOfRange: ({ label, from, to, unit }: { label: string; from: string; to: string; unit: string }) =>
    `${label} must lie between ${from} and ${to} ${unit}.`,
};

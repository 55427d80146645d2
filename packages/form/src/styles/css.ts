/** Marks a text as a style sheet, for editors and formatters. */
export const css: (text: TemplateStringsArray) => string = String.raw;

/** Languages that packets, diagnoses and the stations' pages are written in; the first is taken where none is asked for. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

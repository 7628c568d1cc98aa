/** Sheets that the program itself writes for a person to read; they say nothing of the job. */
export const READ_ME = 'Read me';
export const TO_MEND = 'To mend';

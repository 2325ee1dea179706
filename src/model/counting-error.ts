/** What an interval is called that holds the error of counting alone, from one sampling unit or from no catch. */
export const countingErrorMethod = 'counting error only, not a range for the habitat'

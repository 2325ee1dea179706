/** What a command ends with; 70 is the usual number for a fault of the program itself (sysexits). */
export const exitCode = {clean: 0, errorsFound: 1, couldNotRun: 2, ourFault: 70} as const

export type ExitCode = (typeof exitCode)[keyof typeof exitCode]

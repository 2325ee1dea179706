const nobody = 65534

/** Do something as a user who may do little; root, who may do everything, becomes nobody for the while. */
export async function withoutRights<Result>(work: () => Promise<Result>): Promise<Result> {
  if (process.getuid?.() !== 0 || process.seteuid === undefined) return work()
  process.seteuid(nobody)
  try {
    return await work()
  } finally {
    process.seteuid(0)
  }
}

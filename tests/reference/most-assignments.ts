/** Designs with more arrangements than this have no exhaustive p in the second implementation (layouts.py). */
export const mostAssignments = 5000

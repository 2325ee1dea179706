import type {UnitInUse} from './comparable.ts'

/** A sampling unit as results name it. */
export function unitRef({id, label, site: {habitat}}: UnitInUse) {
  return {id, label, habitat: habitat.id, style: habitat.style}
}

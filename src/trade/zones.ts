/** Zones of an accumulating conveyor: each holds one case, or a part of a longer one. */

/** Rounding of a quotient that is meant to be whole: 3.048 m are four zones of 762 mm. */
const hair = 1e-9

/** Whole zones on a conveyor of `length`; what is left over holds no case. Metres. Definition. */
export const wholeZones = (length: number, zone: number): number => Math.floor(length / zone + hair)

/** Zones that a case of `length` takes: as many as it lies on, at least one. Metres. Definition. */
export const zonesFor = (length: number, zone: number): number => Math.max(1, Math.ceil(length / zone - hair))

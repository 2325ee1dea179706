import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

const text = z.string()
const metresEast = z.number().describe('Metres east of the western edge of the map.')
const metresNorth = z.number().describe('Metres north of the southern edge of the map.')

/** Sites on a map, from their positions as others may see them and from nothing else. */
export const siteMapSchema = z
  .strictObject({
    sites: z.array(
      z.strictObject({
        site: text.describe('Id of the site.'),
        eastM: metresEast,
        northM: metresNorth,
        widthM: z.number().optional().describe('Extent of the square within which a rounded position lies.'),
        heightM: z.number().optional()
      })
    ),
    rounded: measure.describe('Sites on the map whose position is shown only roughly.'),
    tooRough: measure.describe('Sites whose position is shown too roughly for the map of the others.'),
    keptBack: measure.describe('Sites whose position is not shown to others.'),
    notRecorded: measure.describe('Sites without a position on record.'),
    whyNot: text.optional().describe('Why there is no map: completes "because ...".')
  })
  .meta({id: 'siteMap'})

/** How the traps of a site stood to one another; never where on the earth. */
export const trapLayoutSchema = z
  .strictObject({
    name: text.describe('The site in the name of its picture: letters, digits, dashes and underscores.'),
    traps: z.array(z.strictObject({id: text, eastM: metresEast, northM: metresNorth})),
    notPlaced: measure.describe('Traps whose place at the site is not on record.'),
    whyNot: text.optional().describe('Why there is no drawing: completes "because ...".')
  })
  .meta({id: 'trapLayout'})

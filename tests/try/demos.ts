/** The demos with what lies beside them, as a page holds them, and what a study tells of an ask. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { inProcess } from '../../src/shifts/in-process.js'
import type { Line } from '../../src/try/data.js'
import type { Tree } from '../../src/try/draft/yaml-text.js'
import type { Field } from '../../src/try/fields/field.js'
import { groupAt, partsOf } from '../../src/try/fields/groups.js'
import { saysOnce } from '../../src/try/fields/leaf.js'
import type { Ask, Told } from '../../src/try/study/messages.js'
import { Tryout } from '../../src/try/study/tryout.js'
import { demoFolder } from '../demo.js'

const csv = Object.fromEntries(
  readdirSync(demoFolder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => [name, readFileSync(path.join(demoFolder, name), 'utf8')]),
)

export const demoNames = readdirSync(demoFolder).filter((name) => name.endsWith('.yaml'))

/** A demo; `name` is that of its file. */
export const demo = (name: string): Line => ({
  name: path.join(demoFolder, name),
  text: readFileSync(path.join(demoFolder, name), 'utf8'),
  files: csv,
})

const says = saysOnce()

/** The fields of all parts of a scenario, in their order. */
export const fieldsOf = (tree: Tree): Field[] =>
  partsOf(tree).flatMap(({ path: at }) => [...groupAt(tree, at, says)!.fields])

/** All that is told of an ask until `isEnough`, by a study of its own in this thread. */
export async function toldOf(ask: Ask, isEnough: (told: Told) => boolean = () => false): Promise<Told[]> {
  const all: Told[] = []
  let enough = () => {}
  const until = new Promise<void>((resolve) => {
    enough = resolve
  })
  const tryout = new Tryout(inProcess(), (told) => {
    all.push(told)
    if (isEnough(told)) enough()
  })
  const taken = tryout.take(ask)
  await Promise.race([taken, until])
  tryout.stop()
  await taken
  return all
}

/** Those of one kind. */
export const only = <What extends Told['what']>(all: readonly Told[], what: What) =>
  all.filter((told): told is Extract<Told, { what: What }> => told.what === what)

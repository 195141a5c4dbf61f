/** `tapeshift new`: a commented starter scenario that runs as it stands. */
import { existsSync } from 'node:fs'
import path from 'node:path'
import type { Command } from 'commander'
import { quoted } from '../answers/repeat.js'
import { exits, type Io } from './io.js'

/** Adds the command. */
export function addNew(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('new')
    // what several other programs call their first step
    .alias('init')
    .argument('<FILE>', 'file to write; an existing file is never overwritten')
    .description('write a starter scenario with comments that runs as it is, or a starter record')
    .addHelpText(
      'before',
      'Examples:\n  tapeshift new line.yaml\n  tapeshift new record.yaml --record     for the logs of a plant: tapeshift fit\n',
    )
    .option(
      '--record',
      'write a record file instead: it names the CSV files of a plant and says what their words mean',
    )
    .action(async (name: string, { record }: { record?: boolean }) => {
      if (record) return finish(await newRecord(name, io))
      const [{ jsonSchemaText }, { starterScenario }, { writeNew, writeWhole }] = await Promise.all([
        import('../scenario/json-schema.js'),
        import('../scenario/starter.js'),
        import('./files.js'),
      ])
      const file = path.resolve(io.cwd, name)
      await writeNew(file, starterScenario)
      const schema = path.join(path.dirname(file), 'scenario.schema.json')
      const isThere = existsSync(schema)
      if (!isThere) await writeWhole(schema, jsonSchemaText())
      io.stdout.write(
        `Wrote ${name}${isThere ? '' : ' and scenario.schema.json, with which editors check the file while you type'}.\nSimulate it: tapeshift run ${quoted(name)}\n`,
      )
      finish(exits.done)
    })
}

/** Writes a starter record; returns the exit code. */
async function newRecord(name: string, io: Io): Promise<number> {
  const [{ starterRecord }, { writeNew }] = await Promise.all([
    import('../record/starter.js'),
    import('./files.js'),
  ])
  await writeNew(path.resolve(io.cwd, name), starterRecord)
  io.stdout.write(
    `Wrote ${name}: enter the names of your files and columns, and the meaning of each reason.\nThen: tapeshift fit ${quoted(name)}\n`,
  )
  return exits.done
}

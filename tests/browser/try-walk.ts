/** A seeded walk through the page to try a line in: fields, pieces, undo, text; after each step it must still answer. */
import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoText, figuresOf, isThere, launched, madeOf, openedIn, patience } from './try-page.js'
import { answered, expectAsInNode, listening } from './try-told.js'

/** What the page says where a figure went wrong. */
const wrong = /\bNaN\b|undefined|Infinity|\[object/

/**
 * Walks `steps` steps within the page itself, which is faster than from outside. Each step writes into a random field, steps a number,
 * chooses a part, does something with a piece, or goes back or forth in the history. Tells the first answer that is blank or wrong.
 */
const walk = (page: Page, seed: number, steps: number): Promise<string[]> =>
  page.evaluate(
    async ({ seed, steps, wrong }) => {
      let state = seed >>> 0
      // mulberry32 (T. Ettinger, public domain)
      const random = () => {
        state = (state + 0x6d2b79f5) >>> 0
        let mixed = Math.imul(state ^ (state >>> 15), state | 1)
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
      }
      const oneOf = <T>(all: ArrayLike<T>): T | undefined => all[Math.floor(random() * all.length)]
      const all = <E extends HTMLElement>(which: string) =>
        [...document.querySelectorAll<E>(which)].filter(
          (each) => !(each as unknown as HTMLButtonElement).disabled,
        )
      const values = [
        '0',
        '1',
        '7',
        '12.5',
        '-3',
        '1e9',
        '1e-9',
        '',
        'fast',
        '3 ft',
        '40 %',
        '{',
        '[1, 2]',
        'null',
        '2 in 40 h',
        '"',
        'a: b',
        '9 cases/min',
        '*x',
        '👷',
      ]
      const write = (box: HTMLInputElement, value: string) => {
        box.focus()
        box.value = value
        box.dispatchEvent(new Event('input', { bubbles: true }))
        if (random() < 0.5) box.blur()
      }
      const choose = (box: HTMLSelectElement) => {
        const option = oneOf(box.options)
        if (!option) return
        box.value = option.value
        box.dispatchEvent(new Event('change', { bubbles: true }))
      }
      const acts: (() => void)[] = [
        () => oneOf(all<HTMLButtonElement>('button.part'))?.click(),
        () => oneOf(all<HTMLButtonElement>('.acts button'))?.click(),
        () => oneOf(all<HTMLButtonElement>('.tools > button'))?.click(),
        () => oneOf(all<HTMLButtonElement>('.field button.quiet'))?.click(),
        () => {
          const box = oneOf(all<HTMLSelectElement>('.field select'))
          if (box) choose(box)
        },
        ...Array.from({ length: 4 }, () => () => {
          const box = oneOf(all<HTMLInputElement>('.field input[type=text]'))
          // mostly a number not far from what it is, now and then anything
          if (box)
            write(
              box,
              random() < 0.7 && Number(box.value) > 0
                ? String(Number((Number(box.value) * (0.5 + random())).toPrecision(3)))
                : oneOf(values)!,
            )
        }),
        ...Array.from({ length: 2 }, () => () => {
          const box = oneOf(all<HTMLInputElement>('.field input[type=range]'))
          if (!box) return
          box.value = String(Number(box.min) + random() * (Number(box.max) - Number(box.min)))
          box.dispatchEvent(new Event('input', { bubbles: true }))
        }),
        // wrong texts do not pile up
        ...Array.from(
          { length: 3 },
          () => () =>
            dispatchEvent(
              new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true, cancelable: true }),
            ),
        ),
      ]
      const found: string[] = []
      const tell = new RegExp(wrong)
      // a file is not saved thousands of times
      HTMLAnchorElement.prototype.click = () => {}
      for (let step = 0; step < steps && found.length === 0; step++) {
        oneOf(acts)!()
        await new Promise((done) => setTimeout(done, step % 10 === 0 ? 120 : 0))
        const answer = document.querySelector('.answer')?.textContent ?? ''
        const rate = document.querySelector('[data-measure=throughput] .value')?.textContent ?? ''
        if (answer.trim() === '' || rate.trim() === '') found.push(`step ${step}: a blank answer`)
        const met = tell.exec(answer) ?? tell.exec(document.querySelector('.brief')?.textContent ?? '')
        if (met) found.push(`step ${step}: ${met[0]} in ${answer.slice(0, 300)}`)
      }
      return found
    },
    { seed, steps, wrong: wrong.source },
  )

/** Whether the page answers again once it is as it came. */
async function comesBack(page: Page): Promise<void> {
  await asItCame(page)
  await expect
    .poll(() => page.locator('.progress').textContent(), { timeout: patience })
    .toMatch(/^\d+ simulated shifts/)
}

async function asItCame(page: Page): Promise<void> {
  const back = page.getByRole('button', { name: 'As it came' })
  if (await back.isEnabled()) await back.click()
}

/** Edits that are taken back at most to come to a text that can be simulated. */
const mostTakenBack = 20

/** Holds what the page tells against Node: of a text that cannot be simulated why, then of the last one before it that can its whole document. */
async function equalsNode(page: Page): Promise<void> {
  for (let back = 0; back <= mostTakenBack; back++) {
    // a line of a billion cases takes for ever, in Node too
    const heard = await answered(page, patience / 4)
    if (heard) await expectAsInNode(heard)
    if (heard?.figures) return
    await page.keyboard.press('Control+z')
  }
  await asItCame(page)
  const heard = await answered(page, patience)
  expect(heard?.figures).toBeDefined()
  await expectAsInNode(heard!)
}

/** What the page's own thread holds once it has tidied up, and all of its process, workers too, MB. */
async function memoryOf(browser: Browser, page: Page): Promise<{ page: number; process: number }> {
  const held = (await page.evaluate('gc(); performance.memory.usedJSHeapSize')) as number
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  const pages = processInfo.filter(({ type }) => type === 'renderer')
  const kilobytes = pages.map(({ id }) =>
    Number(/^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1] ?? 0),
  )
  return { page: held / 1e6, process: Math.max(...kilobytes) / 1e3 }
}

/** Edits after which what the page tells is held against Node, and after which a long walk says how far it is. */
const [stretch, told] = [100, 1000]

/** What the page's thread may hold more after a walk, MB: 2 million letters of its history, two bytes each, once more in what is kept, and as much again. */
const mostMore = 16

/** So many random edits of the main demo, in a page of its own. */
export function itWalks(edits: number, timeout: number): void {
  describe.skipIf(!isThere)('random edits in the page', { timeout }, () => {
    let browser: Browser
    beforeAll(async () => {
      browser = await launched(['--enable-precise-memory-info', '--js-flags=--expose-gc'])
    }, patience)
    afterAll(() => browser?.close())

    it('never give a blank answer, an error, more memory, or another figure than the command line', async () => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
      await listening(context)
      const { page, complaints } = await openedIn(context, await madeOf(demoText('soap-works')))
      await figuresOf(page)
      const before = await memoryOf(browser, page)
      for (let done = 0; done < edits; done += stretch) {
        expect(await walk(page, 1 + done, Math.min(stretch, edits - done))).toEqual([])
        await equalsNode(page)
        if ((done + stretch) % told === 0) console.log(done + stretch, 'edits', await memoryOf(browser, page))
      }
      await comesBack(page)
      expect(complaints).toEqual([])
      const after = await memoryOf(browser, page)
      console.log(`${edits} edits; memory before and after, MB:`, before, after)
      expect(after.page).toBeLessThan(before.page + mostMore)
      await context.close()
    })
  })
}

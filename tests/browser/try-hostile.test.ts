/** Texts that the page to try a line in was not made for: long ones, and signs that nobody sees. It stays what it is, and says what it does not do. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  box,
  demoText,
  figuresOf,
  isThere,
  launched,
  madeOf,
  open,
  opened,
  openedIn,
  patience,
  poll,
  textOf,
} from './try-page.js'

/** The demo with a comment of so many letters in front. */
const withComment = (letters: number) => `# ${'c'.repeat(letters)}\n${demoText('soap-works')}`

/** Counts the texts that the page asks its workers about. */
const counting = `
const Plain = Worker
window.asked = new Set()
window.Worker = class extends Plain {
  postMessage(sent, ...more) {
    if (sent.what === 'try') window.asked.add(sent.after)
    super.postMessage(sent, ...more)
  }
}`
const asked = (page: Page) => page.evaluate('window.asked.size') as Promise<number>

describe.skipIf(!isThere)(
  'the page to try a line in, given a text that it was not made for',
  { timeout: 4 * patience },
  () => {
    let browser: Browser
    beforeAll(async () => {
      browser = await launched()
    }, patience)
    afterAll(() => browser?.close())

    it('takes what is typed into a long one when somebody pauses or leaves, and not key by key', async () => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
      await context.addInitScript(counting)
      const { page, complaints } = await openedIn(context, await madeOf(withComment(30_000)))
      await figuresOf(page)
      await open(page, 'sealer')
      const speed = box(page, 'line.sealer.belt-speed')
      const before = await asked(page)
      // all keys in one breath of the page: nobody types faster
      await speed.evaluate((input: HTMLInputElement) => {
        input.focus()
        for (const value of ['1', '18', '18.', '18.5']) {
          input.value = value
          input.dispatchEvent(new Event('input', { bubbles: true }))
        }
      })
      await poll(() => asked(page)).toBe(before + 1)
      expect(await textOf(page)).toContain('belt-speed: 18.5 m/min')
      await speed.evaluate((input: HTMLInputElement) => {
        input.focus()
        input.value = '17'
        input.dispatchEvent(new Event('input', { bubbles: true }))
        input.blur()
      })
      expect(await textOf(page)).toContain('belt-speed: 17 m/min')
      await page.keyboard.press('Control+z')
      await page.keyboard.press('Control+z')
      expect(await textOf(page)).toBe(withComment(30_000))
      expect(complaints).toEqual([])
      await context.close()
    })

    it('says of one that is too long for fields that it is, and lets it be changed as text', async () => {
      const { page, complaints, context } = await opened(browser, await madeOf(withComment(120_000)))
      await figuresOf(page)
      expect(await page.locator('.edit').textContent()).toMatch(
        /^This text has 124 thousand letters\. Texts of up to 100 thousand have fields; change this one as text\./,
      )
      await page.getByRole('button', { name: 'Text', exact: true }).click()
      await page.getByRole('textbox', { name: 'The scenario as text' }).click()
      await page.keyboard.press('Control+Home')
      await page.keyboard.type('# mine ')
      expect(await textOf(page)).toBe(`# mine ${withComment(120_000)}`)
      // a shorter one has fields again
      await page.getByRole('button', { name: 'As it came' }).focus()
      await page.getByRole('textbox', { name: 'The scenario as text' }).focus()
      await page.keyboard.press('Control+Home')
      await page.keyboard.press('Shift+End')
      await page.keyboard.press('Delete')
      await poll(() => page.locator('.edit').textContent()).not.toContain('thousand letters')
      await open(page, 'sealer')
      expect(await box(page, 'line.sealer.belt-speed').inputValue()).toBe('20')
      expect(complaints).toEqual([])
      await context.close()
    })

    it('shows signs that turn the direction of writing, and lets none of them turn it', async () => {
      const text = demoText('soap-works')
        .replace(/^title: .*$/m, 'title: "\\u202Eabc def"')
        .replace('# required', '# \u202Erequired \u2066')
      const { page, complaints, context } = await opened(browser, await madeOf(text))
      await figuresOf(page)
      await poll(() => page.locator('h1').textContent()).toBe('·abc def')
      await page.getByRole('button', { name: 'Text', exact: true }).click()
      await poll(() => page.locator('.cm-specialChar').count()).toBe(2)
      expect(
        await page.evaluate(() =>
          /[\u202A-\u202E\u2066-\u2069]/.test(document.querySelector('main')!.textContent),
        ),
      ).toBe(false)
      expect(await textOf(page)).toBe(text)
      expect(complaints).toEqual([])
      await context.close()
    })
  },
)

/** Hashes: SHA-256 in hexadecimal digits, alike in Node and in a browser. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/** SHA-256 of a text in UTF-8. */
export const hashOfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)))

/** The same of a value as JSON has it. */
export const hashOf = (value: unknown): string => hashOfText(JSON.stringify(value))

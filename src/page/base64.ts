/** Bytes as text, alike in Node and in a browser. */
import { sha256 } from '@noble/hashes/sha2.js'
import { utf8ToBytes } from '@noble/hashes/utils.js'

/** So many bytes at a time: all at once would be too many arguments. */
const part = 8192

/** Base64 of bytes. */
export function base64(bytes: Uint8Array): string {
  const letters: string[] = []
  for (let at = 0; at < bytes.length; at += part)
    letters.push(String.fromCharCode(...bytes.subarray(at, at + part)))
  return btoa(letters.join(''))
}

/** SHA-256 of a text, as a policy for content names it. */
export const policyHash = (text: string): string => `'sha256-${base64(sha256(utf8ToBytes(text)))}'`

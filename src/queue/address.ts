/** Where a queue is: its server, who asks there, and the name under which all of it stands. */
import { misuse } from '../scenario/fault.js'

export interface Address {
  host: string
  port: number
  /** Number of the database. */
  database: number
  user: string | undefined
  password: string | undefined
  isSecure: boolean
  /** All names on the server begin with it. */
  space: string
  /** For people: without user and password. */
  shown: string
}

const usualPort = 6379

const usualSpace = 'tapeshift'

/**
 * Reads `redis://HOST:PORT/DATABASE#SPACE`; `rediss` goes by TLS. `password`: where the text has none. Throws `Fault` `asked`, which
 * never repeats the text: it may hold a password.
 */
export function readAddress(text: string, password: string | undefined): Address {
  const wrong = (what: string) =>
    misuse(`--queue: ${what}: write redis://HOST:PORT, or rediss://HOST:PORT for a server with TLS`)
  let url: URL
  try {
    url = new URL(text)
  } catch {
    throw wrong('this is not an address')
  }
  const { protocol, hostname, port, pathname, search, hash } = url
  if (protocol !== 'redis:' && protocol !== 'rediss:')
    throw wrong('the address of a queue begins with redis: or rediss:')
  if (hostname === '') throw wrong('the host is missing')
  const space = hash === '' ? usualSpace : hash.slice(1)
  if (search !== '' || !/^\/?\d{0,3}$/.test(pathname))
    throw wrong('after the port only the number of a database may follow')
  if (!/^[\w.-]{1,60}$/.test(space))
    throw wrong('the name after # takes 1 to 60 letters, digits, points, dashes and underlines')
  const decoded = (part: string) => (part === '' ? undefined : decodeURIComponent(part))
  const database = Number(pathname.slice(1))
  return {
    host: hostname.replace(/^\[|\]$/g, ''),
    port: port === '' ? usualPort : Number(port),
    database,
    user: decoded(url.username),
    password: decoded(url.password) ?? password,
    isSecure: protocol === 'rediss:',
    space,
    shown: `${protocol}//${hostname}:${port === '' ? usualPort : port}${database > 0 ? `/${database}` : ''}${hash}`,
  }
}

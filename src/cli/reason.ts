/** What the operating system says, in words. */

const reasons: Record<string, string> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'you have no permission to open it',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is not a folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  EEXIST: 'it exists already',
  ENAMETOOLONG: 'its name is too long',
  EFBIG: 'a limit on the size of files is reached',
  ELOOP: 'its links lead in a circle',
  EDQUOT: 'the disk quota is used up',
}

/** What it said of what failed. */
export function reason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException
  return reasons[code ?? ''] ?? message
}

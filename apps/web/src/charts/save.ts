/** Hands a file to whoever is reading: a name, and what is in it. */
export const save = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
};

/** pdfkit can encrypt a document; ours are not encrypted, so its ciphers stay out of the page. */
const refuse = () => {
  throw new Error('documents are not encrypted');
};
export const cbc = refuse;
export const ecb = refuse;

/** The words a person reads, by key and language, and texts as XML. Pure; knows nothing of pages, paper or music. */
package groundbass.text;

/** The words a person reads, by key and language. Pure; knows nothing of pages, paper or music. */
package groundbass.text;

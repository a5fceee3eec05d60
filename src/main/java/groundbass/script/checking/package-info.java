/** Whether a claim is so, and what would be right. Knows nothing of words or languages. */
package groundbass.script.checking;

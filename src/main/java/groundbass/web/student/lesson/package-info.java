/** Series and lessons as students read them, the same for everyone of one language. Knows nothing of who reads. */
package groundbass.web.student.lesson;

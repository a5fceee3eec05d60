-- The words of a lesson's title apart from all its words, so that lessons that have what is looked for in their title come
-- first. What was read before is read again. Portable: H2 and PostgreSQL run the same text.
delete from lesson_traits;
alter table lesson_traits add column title_words text not null; -- as words has them

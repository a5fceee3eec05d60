-- Which request an entry comes of: the id that its lines in the log carry. None where no request did it.
alter table audit add column request varchar(16);

-- Notes what a reference leads to.
-- KEYS  1 references of the day, 2 early receipt
-- ARGV  1 mark, 2 what it leads to, 3 lifetime of the references [ms]
-- Gives the receipt that came before, or false.

redis.call('HSET', KEYS[1], ARGV[1], ARGV[2])
redis.call('PEXPIRE', KEYS[1], ARGV[3])
return redis.call('GET', KEYS[2])

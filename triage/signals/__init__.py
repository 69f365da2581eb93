"""What can be measured on a speed log, each quantity with its uncertainty and the seconds it rests on."""

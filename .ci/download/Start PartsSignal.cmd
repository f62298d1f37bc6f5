@echo off
rem Starts PartsSignal from wherever this folder was put; the browser opens by itself.
title PartsSignal
if not exist "%~dp0program\partssignal.exe" (
  echo PartsSignal is still inside its zip file.
  echo Right-click the zip file, choose "Extract All", and start it from the new folder.
  pause
  exit /b 1
)
"%~dp0program\partssignal.exe" bench %*
if errorlevel 1 pause
